/** An angle for a bench: to a hundredth of a degree, and saying so where that is not the whole of it. */
export function degrees(angle: number): string {
  const rounded = Math.round(angle * 100) / 100;
  return `${Math.abs(rounded - angle) > 1e-9 ? '≈ ' : ''}${rounded}°`;
}
