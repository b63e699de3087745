// How the page writes measured numbers, with a real minus sign.

/** Two decimal places: `−0.35`. */
export function twoPlaces(value: number): string {
  return value.toFixed(2).replace('-', '−');
}

/** One decimal place and half the width of the interval: `+1.2 ± 0.4`. */
export function withInterval(value: number, halfWidth: number, signed: boolean): string {
  const size = Math.abs(value).toFixed(1);
  const sign = value < 0 && size !== '0.0' ? '−' : signed && size !== '0.0' ? '+' : '';
  return `${sign}${size} ± ${halfWidth.toFixed(1)}`;
}
