/** The colours of a drawing: plain data. What they tell apart is told apart by lines, hatching and labels as well. */
export interface Theme {
  /** What it is drawn on. */
  readonly paper: string;
  /** Visible edges, names, figures. */
  readonly ink: string;
  /** Hatching of what is cut through, signs on loose metal, dimensions, centre lines, rules. */
  readonly soft: string;
  /** Metal that is kept, held by a floor, and loose. */
  readonly kept: string;
  readonly held: string;
  readonly loose: string;
  /** Laid over faces under the top one, the thicker the deeper they lie: darker than the metal. */
  readonly shade: string;
  /** What a cut takes in its turn. */
  readonly kerf: string;
  /** The tool: its circle, its centre, its path. */
  readonly tool: string;
  /** Marks of thin metal, and of dangers. */
  readonly warning: string;
}

/** Themes that are ready: for paper, for a dark screen, and for a printer that knows black alone. */
export const THEMES = {
  light: {
    paper: '#ffffff',
    ink: '#1b2730',
    soft: '#5d6b74',
    kept: '#eef3f1',
    held: '#f6ecd0',
    loose: '#f9e3d8',
    shade: '#0c1a22',
    kerf: '#e3e9ee',
    tool: '#17567a',
    warning: '#96260f',
  },
  dark: {
    paper: '#171d21',
    ink: '#ece7da',
    soft: '#9aa6a8',
    kept: '#26333a',
    held: '#463d20',
    loose: '#4d3027',
    shade: '#000000',
    kerf: '#101518',
    tool: '#8fc7e0',
    warning: '#ff9f87',
  },
  mono: {
    paper: '#ffffff',
    ink: '#000000',
    soft: '#000000',
    kept: '#ffffff',
    held: '#ffffff',
    loose: '#ffffff',
    shade: '#000000',
    kerf: '#ffffff',
    tool: '#000000',
    warning: '#000000',
  },
} as const satisfies Readonly<Record<string, Theme>>;

/** The name of a theme that is ready. */
export type ThemeName = keyof typeof THEMES;

/** The names of the themes that are ready. */
export const THEME_NAMES = Object.keys(THEMES) as readonly ThemeName[];

/** A colour that cannot lead anywhere: a hexadecimal number, a name, or a custom property of the page. */
export const COLOUR = /^(#[0-9a-f]{3,8}|[a-z]+|var\(--[a-z0-9-]+\))$/i;

/** The theme of a name, or the one that is given. */
export function themeOf(theme: ThemeName | Theme): Theme {
  return typeof theme === 'string' ? THEMES[theme] : theme;
}
