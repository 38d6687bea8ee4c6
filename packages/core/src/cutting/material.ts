/** The metals of which cutting numbers and strengths are known, by the names that the tables use. */
export const METALS = [
  'mild steel',
  'alloy steel',
  'tool steel',
  'stainless steel',
  'cast iron',
  'aluminium',
  'brass',
  'bronze',
  'titanium',
] as const;

/** A metal of the tables. */
export type Metal = (typeof METALS)[number];

/** Other names that a shop uses for them. */
const ALSO: Readonly<Record<string, Metal>> = {
  'low-carbon steel': 'mild steel',
  'low carbon steel': 'mild steel',
  aluminum: 'aluminium',
  stainless: 'stainless steel',
  'gray cast iron': 'cast iron',
  'grey cast iron': 'cast iron',
};

/** Hardness, Brinell, for which the figures of a metal are meant. From memory: the sheets they are from do not say. */
export const HARDNESS: Readonly<Record<Metal, string>> = {
  'mild steel': 'as rolled or drawn, about 100 to 180 HB',
  'alloy steel': 'annealed or lightly hardened, about 180 to 280 HB',
  'tool steel': 'annealed, about 180 to 240 HB; not hardened',
  'stainless steel': 'annealed, about 140 to 220 HB',
  'cast iron': 'grey, from soft, about 130 HB, to hard, about 230 HB; without its skin',
  aluminium: 'wrought alloys, about 40 to 120 HB',
  brass: 'free-cutting, half hard at most',
  bronze: 'tin bronze, about 60 to 120 HB',
  titanium: 'from pure to the usual alloys, annealed',
};

/**
 * The metal of the tables that a material's plain name means, whatever its capitals; null if it is none of them. Plain
 * `steel` is none: its speeds and strengths differ four to one.
 */
export function metalOf(material: string): Metal | null {
  const name = material.trim().toLowerCase().replace(/\s+/g, ' ');
  const known = METALS.find((metal) => metal === name);
  if (known !== undefined) return known;
  return Object.hasOwn(ALSO, name) ? (ALSO[name] as Metal) : null;
}
