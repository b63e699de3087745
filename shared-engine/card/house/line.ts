// A line of the house card before its measured points are added.
import type { CardLine } from '../format.ts';

export type HouseLine = Omit<CardLine, 'points'>;
