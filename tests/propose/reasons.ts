import type { AimDocument, DrawerTool, Refusal } from '@edgebite/core';
import { proposed } from './checks.js';
import type { MixedPart, Taken } from './mixed-parts.js';

/*
 * Whether a refusal is right: what it says is missing is given, and the refusal has to go; and nothing may be refused of
 * which each piece that was taken has a tool of just its size.
 */

/** What is wrong with the refusals of a part; nothing where they are right. */
export function wrongRefusals(part: MixedPart, refusals: readonly Refusal[]): string[] {
  const plain = part.taken.every((taken) => isPlainlyMade(part, taken));
  return [
    ...(plain ? [`${refusals[0]?.message} But each piece has a tool of its size.`] : []),
    ...refusals.flatMap((refusal) => (isStill(part.aim, refusal) ? [`still: ${refusal.message}`] : [])),
    ...refusals.flatMap(({ message, feature }) =>
      feature === null || /NaN|undefined/.test(message) ? [message] : [],
    ),
  ];
}

/** Whether a place is refused for the same reason though what it wants is there. */
function isStill(aim: AimDocument, { code, at }: Refusal): boolean {
  const given = proposed(withGiven(aim, code));
  return (given?.refusals ?? []).some(
    (one) => one.code === code && one.at[0] === at[0] && one.at[1] === at[1],
  );
}

const FAR = 500;

/** Made parts have nothing narrower: it goes wherever something was taken. */
const fine: DrawerTool = {
  id: 'fine',
  kind: 'end mill',
  toolMaterial: 'HSS',
  diameter: 3,
  reach: FAR,
  teeth: 2,
  centerCutting: true,
};

/** The aim with what a refusal says would do. */
function withGiven(aim: AimDocument, code: Refusal['code']): AimDocument {
  const { machine: _, ...anySpeed } = aim;
  const reaching = aim.drawer.map((tool) =>
    tool.kind === 'boring head' ? { ...tool, bar: FAR } : { ...tool, reach: FAR },
  );
  switch (code) {
    case 'reach':
      return { ...anySpeed, drawer: reaching };
    case 'spindle':
      return anySpeed;
    case 'arcs':
      return { ...aim, arcs: true };
    case 'no-size':
      return { ...anySpeed, arcs: true, drawer: [...aim.drawer, fine] };
    case 'no-way-in':
      return {
        ...anySpeed,
        arcs: true,
        drawer: [
          ...reaching.map((tool) => (tool.kind === 'end mill' ? { ...tool, centerCutting: true } : tool)),
          fine,
        ],
      };
    case 'passes':
      return { ...anySpeed, arcs: true, bite: 5, drawer: [...reaching, fine] };
    // Rounds and slots leave no inside corner: nothing would do.
    case 'shape':
      return aim;
  }
}

/** Whether a tool of just its size goes down, or along, to its depth. */
function isPlainlyMade({ aim }: MixedPart, { depth, size, length, isBent }: Taken): boolean {
  if (aim.machine !== undefined || (isBent && aim.arcs !== true)) return false;
  return aim.drawer.some((tool) => {
    if (tool.kind === 'boring head' || tool.diameter !== size) return false;
    const isOfKind = tool.kind === 'end mill' || (depth === null && length === 0);
    // What goes through may be made from both sides.
    return isOfKind && (depth === null ? 2 * tool.reach >= aim.thickness : tool.reach >= depth);
  });
}
