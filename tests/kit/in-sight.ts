// Whether something can be seen without scrolling: the whole of it lies in the window.
import type { Locator } from 'playwright-core';

export async function isInSight(place: Locator): Promise<boolean> {
  const [box, size] = [await place.boundingBox(), place.page().viewportSize()];
  if (box === null || size === null) return false;
  const { x, y, width, height } = box;
  return x >= 0 && y >= 0 && x + width <= size.width && y + height <= size.height;
}
