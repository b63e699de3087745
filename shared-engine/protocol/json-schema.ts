// JSON Schema of the protocol's own schemas; the parts that recur get names, and the documents refer to those.
import { z } from 'zod';
import { askedTermsSchema, faceSchema, seatSchema, stepSchema, termsSchema } from '../rules/index.ts';
import { rejectionCodeSchema } from './rejections.ts';
import { reviewSchema } from './review.ts';
import { seatInfoSchema, tableDeltaSchema, tableSchema } from './table.ts';
import { viewDeltaSchema, viewSchema } from './views.ts';

export type JsonObject = Readonly<Record<string, unknown>>;

/** Draft 7 is the language of AsyncAPI 3, the newer one that of OpenAPI 3.1. */
export type SchemaDialect = 'draft-7' | 'draft-2020-12';

const RECURRING: Readonly<Record<string, z.ZodType>> = {
  AskedTerms: askedTermsSchema,
  Face: faceSchema,
  RejectionCode: rejectionCodeSchema,
  Review: reviewSchema,
  Seat: seatSchema,
  SeatInfo: seatInfoSchema,
  Step: stepSchema,
  Table: tableSchema,
  TableDelta: tableDeltaSchema,
  Terms: termsSchema,
  View: viewSchema,
  ViewDelta: viewDeltaSchema,
};

/** Where the documents place a schema. */
export function schemaRef(name: string): { readonly $ref: string } {
  return { $ref: `#/components/schemas/${name}` };
}

/** The named schemas and those that recur in them, for the `components` of a document. */
export function jsonSchemasOf(
  named: Readonly<Record<string, z.ZodType>>,
  target: SchemaDialect,
): Readonly<Record<string, JsonObject>> {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries({ ...RECURRING, ...named })) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, {
    target,
    // What a reader has to accept: an object may get more fields within a version.
    io: 'input',
    uri: (id) => schemaRef(id).$ref,
    override({ jsonSchema }) {
      delete jsonSchema.readOnly;
      if (jsonSchema.maximum === Number.MAX_SAFE_INTEGER) delete jsonSchema.maximum;
      if (jsonSchema.minimum === Number.MIN_SAFE_INTEGER) delete jsonSchema.minimum;
    },
  });
  // A document names its dialect once, and the place of a schema is its name.
  return Object.fromEntries(
    Object.entries(schemas).map(([name, { $schema: _, $id: __, ...schema }]) => [name, schema]),
  );
}
