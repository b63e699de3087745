// The table that somebody has, with what was told of it since.
import { withViewNews } from '../rules/view/delta.ts';
import type { Table, TableNews } from './messages.ts';

/** Null where the news do not fit the table: it is not the one that they were made for. */
export function withNews(table: Table, { viewNews, ...news }: TableNews): Table | null {
  const { you = table.you, seats = table.seats, round = table.round, led = table.led } = news;
  const { remaining = table.remaining, view = table.view } = news;
  const seen = view && viewNews ? withViewNews(view, viewNews) : view;
  if (viewNews && seen === null) return null;
  return { ...table, you, seats, round, remaining, view: seen, ...(led && { led }) };
}
