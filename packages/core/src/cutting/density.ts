/**
 * Densities of common shop metals in g/cm³: usual handbook values, from memory; an alloy may differ by a few percent.
 */
const DENSITY: Readonly<Record<string, number>> = {
  'mild steel': 7.85,
  steel: 7.85,
  'tool steel': 7.8,
  'stainless steel': 7.9,
  'cast iron': 7.2,
  aluminium: 2.7,
  aluminum: 2.7,
  brass: 8.5,
  bronze: 8.8,
  copper: 8.96,
  titanium: 4.5,
};

/** Density of a material by its plain name, in g/cm³, whatever its capitals; null if it is not one we know. */
export function densityOf(material: string): number | null {
  const name = material.trim().toLowerCase().replace(/\s+/g, ' ');
  return Object.hasOwn(DENSITY, name) ? (DENSITY[name] as number) : null;
}

/** Cubic centimetres in a cubic millimetre and in a cubic inch; an inch is 25.4 mm (ISO 31, exact). */
const CUBIC_CM = { mm: 1e-3, inch: 2.54 ** 3 } as const;

/** Grams in the unit of mass that goes with a unit of length; a pound is 453.59237 g (exact, by definition). */
const GRAMS = { mm: 1, inch: 453.59237 } as const;

/** Mass of a volume: in grams for cubic millimetres, in pounds for cubic inches. */
export function massOf(volume: number, density: number, units: 'mm' | 'inch'): number {
  return (volume * CUBIC_CM[units] * density) / GRAMS[units];
}
