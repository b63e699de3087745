// The table that somebody has, with what was told of it since.
import { applyViewDelta } from '../rules/view/delta.ts';
import type { Table, TableDelta } from './messages.ts';

/** Null where the news do not fit the table: it is not the one that they were made for. */
export function applyDelta(table: Table, { viewDelta, ...news }: TableDelta): Table | null {
  const { you = table.you, seats = table.seats, round = table.round, controls = table.controls } = news;
  const { remaining = table.remaining, view = table.view } = news;
  const seen = view && viewDelta ? applyViewDelta(view, viewDelta) : view;
  if (viewDelta && seen === null) return null;
  return { ...table, you, seats, round, remaining, view: seen, ...(controls && { controls }) };
}
