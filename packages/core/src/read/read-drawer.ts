import { isSameSize } from '../cut/same-size.js';
import { choices, described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type { CutDocument, JobDocument, PlainCut, PlainDocument, ToolDocument } from '../document/schema.js';
import type { DrawerTool } from '../document/schema-drawer.js';
import type { Faults } from '../job/faults.js';
import { idIssues } from '../job/ids.js';
import { FITS, KIND_NAME, listed } from './tool-kinds.js';

/** A job with what its cuts take from the drawer written out. */
export interface WrittenTools {
  readonly document: PlainDocument;
  /** The same faults, for those who must not look at sizes that are taken from a tool which is not known. */
  readonly faults: Faults;
}

/**
 * A job whose cuts have the sizes of the tools that they name, and whose tools are those of its drawer that make
 * something. Faults are taken down: tools that are not there or do not fit, sizes that clash, sizes that nobody gives.
 */
export function withToolsWritten(document: JobDocument, faults: Faults): WrittenTools {
  if (!faults.holds('')) return { document: document as PlainDocument, faults };
  const { drawer, ...rest } = document;
  if (faults.sound('/drawer') && drawer !== undefined) {
    faults.add([...idIssues(drawer, '/drawer', 'tool'), ...drawerIssues(drawer)]);
    if (document.tools !== undefined) {
      faults.add([{ path: '/drawer', message: 'stands beside "tools"; leave one of them out' }]);
    }
  }
  if (!faults.holds('/cuts')) return { document: rest as PlainDocument, faults };
  const hidden = new Set<string>();
  const makers = new Map<DrawerTool, string[]>();
  const cuts = document.cuts.map((cut, k): PlainCut => {
    const path = `/cuts/${k}`;
    if (typeof cut !== 'object' || cut === null) return cut;
    const { tool: id, ...plain } = cut;
    if (id === undefined) faults.add(missingIssues(cut, path, faults));
    const tool = id === undefined ? null : toolOf(document, cut, path, faults);
    if (id === undefined || tool === null) {
      if (id !== undefined) for (const key of SIZES) hidden.add(`${path}/${key}`);
      return plain as PlainCut;
    }
    makers.set(tool, [...(makers.get(tool) ?? []), cut.id]);
    faults.add(clashes(plain, tool, path));
    return sized(plain, tool);
  });
  const made = [...makers].map(([tool, own]) => toolDocument(tool, own));
  const tools = made.length === 0 ? {} : { tools: made };
  const isHidden = (path: string) => hidden.has(path);
  return {
    document: { ...rest, cuts, ...tools } as PlainDocument,
    faults: hidden.size === 0 ? faults : faults.hiding(isHidden),
  };
}

/** What is wrong with tools of a drawer by themselves. */
export function drawerIssues(drawer: readonly DrawerTool[]): JobIssue[] {
  return drawer.flatMap((tool, k) => toolIssues(tool, `/drawer/${k}`));
}

/** A tool of a drawer as a job has it, with the cuts that it makes. */
export function toolDocument(tool: DrawerTool, cuts: readonly string[]): ToolDocument {
  const { tolerance, ...own } = tool;
  if (tool.kind === 'boring head') {
    return { ...own, ...(tolerance === undefined ? {} : { settingTolerance: tolerance }), cuts };
  }
  const off = tolerance === undefined ? {} : { diameterTolerance: tolerance };
  if (tool.kind === 'drill') return { ...own, ...off, cuts };
  if (tool.kind === 'end mill') return { centerCutting: false, ...own, ...off, cuts };
  // How deep a hollow cutter goes, and its wall, are those of its cuts.
  const { wall: _, reach: __, ...ring } = own as Omit<typeof tool, 'tolerance'>;
  return { ...ring, ...off, cuts };
}

/** Sizes that a cut takes from its tool. */
const SIZES = ['diameter', 'wall', 'reach', 'passes'] as const;

/** The tool that a cut names; null if there is none that could make it, which is taken down. */
function toolOf(
  { drawer }: JobDocument,
  { tool: id, kind }: CutDocument,
  cut: string,
  faults: Faults,
): DrawerTool | null {
  const path = `${cut}/tool`;
  if (!faults.sound(path) || !faults.holds('/drawer')) return null;
  const say = (message: string): null => {
    faults.add([{ path, message }]);
    return null;
  };
  if (drawer === undefined) {
    return say(`is ${described(id)}, but the job has no drawer; list its tools under "drawer"`);
  }
  const place = drawer.findIndex((one) => one?.id === id);
  const tool = drawer[place];
  if (tool === undefined) {
    // A tool whose own name is at fault may be the one that is meant.
    const isSure = drawer.every((_, k) => faults.sound(`/drawer/${k}`));
    const known = drawer.map((one) => one?.id).filter((one) => typeof one === 'string');
    return isSure ? say(`is ${described(id)}, but no tool of the drawer has that id${listed(known)}`) : null;
  }
  if (!faults.sound(`/drawer/${place}`) || !faults.sound(`${cut}/kind`)) return null;
  if (FITS[kind].includes(tool.kind)) return tool;
  return say(
    `is ${described(id)}, of kind ${described(tool.kind)}; that of ${KIND_NAME[kind]} must be ${choices(FITS[kind])}`,
  );
}

/** Sizes that nobody gives. Where the centre of a bore is given by three places its diameter follows. */
function missingIssues(cut: CutDocument, path: string, faults: Faults): JobIssue[] {
  const keys = cut.kind === 'annular' ? (['diameter', 'wall'] as const) : (['diameter'] as const);
  if (!faults.sound(`${path}/kind`) || cut.kind === 'bore') return [];
  return keys.flatMap((key) =>
    (cut as { readonly [K in typeof key]?: number })[key] === undefined && faults.sound(`${path}/${key}`)
      ? [
          {
            path: `${path}/${key}`,
            message: 'is missing; a number is needed, or the "tool" of the drawer that has it',
          },
        ]
      : [],
  );
}

/** What a cut says that its tool says otherwise. */
function clashes(cut: Omit<CutDocument, 'tool'>, tool: DrawerTool, path: string): JobIssue[] {
  const { diameter, wall, reach } = cut as { diameter?: number; wall?: number; reach?: number };
  const clash = (key: string, own: number | undefined, has: number): JobIssue[] => {
    if (own === undefined || isSameSize(own, has)) return [];
    const message = `is ${own}, but tool ${described(tool.id)} has ${has}; leave it out, or name another tool`;
    return [{ path: `${path}/${key}`, message }];
  };
  switch (tool.kind) {
    case 'boring head':
      return [];
    case 'annular cutter':
      return [
        ...clash('diameter', diameter, tool.diameter),
        ...clash('wall', wall, tool.wall),
        ...clash('reach', reach, tool.reach),
      ];
    case 'drill':
      return clash('diameter', diameter, tool.diameter);
    case 'end mill': {
      const isRound = cut.kind === 'bore' && diameter !== undefined && diameter > tool.diameter;
      // A mill goes round in a bore that is wider than itself.
      return isRound ? [] : clash('diameter', diameter, tool.diameter);
    }
  }
}

/** A cut with what it takes from its tool. */
function sized(cut: Omit<CutDocument, 'tool'>, tool: DrawerTool): PlainCut {
  const own = cut as PlainCut;
  const { diameter } = own;
  if (tool.kind === 'annular cutter') {
    const { diameter, wall, reach } = tool;
    return { ...own, diameter, wall, reach } as PlainCut;
  }
  const isByPlaces = own.kind === 'bore' && typeof own.center === 'object' && 'through' in own.center;
  const size = tool.kind === 'boring head' || isByPlaces ? diameter : (diameter ?? tool.diameter);
  const all = size === undefined ? own : ({ ...own, diameter: size } as PlainCut);
  const passes = all.kind === 'bore' ? all.passes : undefined;
  if (passes?.kind !== 'open out' || passes.smallest !== undefined) return all;
  const smallest = tool.kind === 'boring head' ? tool.smallest : tool.diameter;
  return { ...all, passes: { ...passes, smallest } } as PlainCut;
}

function toolIssues(tool: DrawerTool, path: string): JobIssue[] {
  if (tool.kind === 'annular cutter' && 2 * tool.wall >= tool.diameter) {
    const message = `must be under half the diameter, ${tool.diameter / 2}; it is ${tool.wall}`;
    return [{ path: `${path}/wall`, message }];
  }
  if (tool.kind === 'boring head' && tool.smallest > tool.largest) {
    const message = `is ${tool.largest}, less than the smallest, ${tool.smallest}; exchange them`;
    return [{ path: `${path}/largest`, message }];
  }
  return [];
}
