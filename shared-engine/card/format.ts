// The open format of card files, as zod schemas and their types; FORMAT.md describes it.
import { z } from 'zod';
import { DRAGONS, isVisibleText, NUMBERS, SUITS, WINDS } from '../rules/index.ts';

export const CARD_FORMAT = 'quadrille-card/1';

/** Bounds of a card file; a file beyond one of them is rejected. */
export const CARD_LIMITS = {
  /** Characters of its name, and of a section's. */
  name: 80,
  sections: 40,
  patterns: 300,
  /**
   * Hands of the whole card, before duplicates are merged: seventeen times those of the house card. FORMAT.md says what
   * a card of so many takes.
   */
  hands: 20_000,
  /** Different variables of one kind in one pattern. */
  variables: { number: 3, suit: 3, dragon: 3, wind: 4 },
} as const;

const idSchema = z
  .string()
  .max(40)
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
const nameSchema = z.string().min(1).max(CARD_LIMITS.name).refine(isVisibleText);
const variableSchema = z
  .string()
  .regex(/^[a-z][a-z0-9]{0,7}$/, 'a variable is a short name in small letters');

const chosenSchema = z.strictObject({ var: variableSchema });
const suitSchema = z.union([z.enum(SUITS), chosenSchema]);
const numberSchema = z.union([
  z.literal(NUMBERS),
  z.strictObject({ var: variableSchema, plus: z.int().min(-8).max(8).exactOptional() }),
]);

const tileSchema = z.union([
  z.strictObject({ number: numberSchema, suit: suitSchema }),
  z.strictObject({ wind: z.union([z.enum(WINDS), chosenSchema]) }),
  /** `matching` names a suit variable: the dragon that belongs to that suit. */
  z.strictObject({
    dragon: z.union([z.enum(DRAGONS), chosenSchema, z.strictObject({ matching: variableSchema })]),
  }),
  z.strictObject({ flower: z.literal(true) }),
  /** Soap: the white dragon, read as 0. */
  z.strictObject({ zero: z.literal(true) }),
  /** A digit of `parameters.year`, the first one being 0; the digit 0 is soap, whatever the suit. */
  z.strictObject({ yearDigit: z.literal([0, 1, 2, 3]), suit: suitSchema }),
]);

const groupSchema = z.strictObject({ size: z.int().min(1).max(6), tile: tileSchema });

/** Values a variable may take. */
const domainSchema = z.union([
  z.strictObject({ from: z.literal(NUMBERS), to: z.literal(NUMBERS) }),
  z.strictObject({ numbers: z.array(z.literal(NUMBERS)).min(1).max(9).readonly() }),
  z.strictObject({ suits: z.array(z.enum(SUITS)).min(1).max(3).readonly() }),
  z.strictObject({ dragons: z.array(z.enum(DRAGONS)).min(1).max(3).readonly() }),
  z.strictObject({ winds: z.array(z.enum(WINDS)).min(1).max(4).readonly() }),
]);

export const patternSchema = z.strictObject({
  id: idSchema,
  section: idSchema,
  points: z.int().min(0).max(1000),
  concealed: z.boolean(),
  groups: z.array(groupSchema).min(1).max(14).readonly(),
  where: z.record(variableSchema, domainSchema).exactOptional(),
});

export const cardFileSchema = z.strictObject({
  format: z.literal(CARD_FORMAT),
  id: idSchema,
  name: nameSchema,
  parameters: z.strictObject({ year: z.int().min(1000).max(9999).exactOptional() }),
  sections: z
    .array(z.strictObject({ id: idSchema, name: nameSchema }))
    .min(1)
    .max(CARD_LIMITS.sections)
    .readonly(),
  patterns: z.array(patternSchema).min(1).max(CARD_LIMITS.patterns).readonly(),
});

/** A card in the making: the same structure, in which lists may still be empty. */
export const cardDraftSchema: z.ZodType<CardFile> = cardFileSchema.extend({
  name: z.string().max(CARD_LIMITS.name),
  sections: z
    .array(z.strictObject({ id: idSchema, name: z.string().max(CARD_LIMITS.name) }))
    .max(CARD_LIMITS.sections)
    .readonly(),
  patterns: z
    .array(patternSchema.extend({ groups: z.array(groupSchema).max(14).readonly() }))
    .max(CARD_LIMITS.patterns)
    .readonly(),
});

export type CardTile = z.infer<typeof tileSchema>;
export type CardGroup = z.infer<typeof groupSchema>;
export type CardDomain = z.infer<typeof domainSchema>;
export type CardPattern = z.infer<typeof patternSchema>;
/** A pattern before its points are measured. */
export type UnscoredPattern = Omit<CardPattern, 'points'>;
export type CardFile = z.infer<typeof cardFileSchema>;

/** The JSON Schema (draft 7) of a card file; `card.schema.json` holds it for use outside this program. */
export function cardJsonSchema(): object {
  return z.toJSONSchema(cardFileSchema, {
    target: 'draft-7',
    io: 'input',
    // Lists are read-only in this program, not for whoever writes a card.
    override: ({ jsonSchema }) => {
      delete jsonSchema.readOnly;
    },
  });
}
