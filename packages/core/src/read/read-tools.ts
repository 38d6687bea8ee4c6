import { choices, described } from '../document/described.js';
import type { JobIssue } from '../document/errors.js';
import type {
  CutDocument,
  JobDocument,
  MachineDocument,
  PlainDocument,
  ToolDocument,
} from '../document/schema.js';
import type { Faults } from '../job/faults.js';
import { idIssues } from '../job/ids.js';
import { FITS, KIND_NAME, listed } from './tool-kinds.js';

/** The tools of a job; their faults are taken down: doubled names, cuts that are not there, tools that do not fit. */
export function readTools(document: PlainDocument, faults: Faults): readonly ToolDocument[] {
  if (!faults.sound('/tools') || document.tools === undefined) return [];
  const { tools } = document;
  faults.add(idIssues(tools, '/tools', 'tool'));
  faults.add(tools.flatMap(bareIssues));
  if (faults.holds('/cuts')) faults.add(cutIssues(tools, document.cuts, faults));
  return tools;
}

/** The speeds of the machine; faults are taken down: both ways of saying them, or the wrong way round. */
export function readMachine(document: JobDocument, faults: Faults): MachineDocument {
  if (!faults.sound('/machine') || document.machine === undefined) return {};
  const { machine } = document;
  const { slowest, fastest, speeds } = machine;
  if (speeds !== undefined && (slowest !== undefined || fastest !== undefined)) {
    faults.add([
      { path: '/machine/speeds', message: 'lists all speeds; leave slowest and fastest out beside it' },
    ]);
  }
  if (slowest !== undefined && fastest !== undefined && slowest > fastest) {
    const message = `is ${slowest}, over the fastest speed, ${fastest}; exchange them`;
    faults.add([{ path: '/machine/slowest', message }]);
  }
  return machine;
}

function bareIssues(tool: ToolDocument, i: number): JobIssue[] {
  return [...kindIssues(tool, i), ...setIssues(tool, i)];
}

/** What belongs to other kinds of tool. */
function kindIssues({ kind, reach, pilot }: ToolDocument, i: number): JobIssue[] {
  const say = (key: string, message: string): JobIssue[] => [{ path: `/tools/${i}/${key}`, message }];
  return [
    ...(reach === undefined || kind === 'drill' || kind === 'end mill'
      ? []
      : say(
          'reach',
          `does not belong to ${described(kind)}; ${kind === 'boring head' ? 'give "bar"' : 'give it with the cut'}`,
        )),
    ...(pilot === undefined || kind === 'annular cutter'
      ? []
      : say('pilot', `does not belong to ${described(kind)}; leave it out`)),
  ];
}

function setIssues(tool: ToolDocument, i: number): JobIssue[] {
  if (tool.kind !== 'boring head') {
    const message = `does not belong to ${described(tool.kind)}, which is not set; leave it out`;
    return HEAD_KEYS.flatMap((key) =>
      tool[key] === undefined ? [] : [{ path: `/tools/${i}/${key}`, message }],
    );
  }
  const say = (key: 'diameter' | 'teeth' | 'diameterTolerance' | 'runOut', message: string): JobIssue[] =>
    tool[key] === undefined ? [] : [{ path: `/tools/${i}/${key}`, message }];
  return [
    ...say(
      'diameter',
      'does not belong to a boring head, which is set to the diameter of each cut; leave it out',
    ),
    ...say('diameterTolerance', 'does not belong to a boring head, which is set; give "settingTolerance"'),
    ...say(
      'runOut',
      'does not belong to a boring head, of which it is in the setting; give "settingTolerance"',
    ),
    ...say('teeth', 'does not belong to a boring head, which has one edge; leave it out'),
    ...headIssues(tool, i),
  ];
}

/** What only a boring head has. */
const HEAD_KEYS = ['dial', 'settingTolerance', 'smallest', 'largest', 'bar'] as const;

function headIssues({ smallest, largest }: ToolDocument, i: number): JobIssue[] {
  if (smallest === undefined || largest === undefined || smallest <= largest) return [];
  const message = `is ${smallest}, over the largest bore, ${largest}; exchange them`;
  return [{ path: `/tools/${i}/smallest`, message }];
}

function cutIssues(tools: readonly ToolDocument[], cuts: readonly CutDocument[], faults: Faults): JobIssue[] {
  const known = new Map<string, CutDocument>();
  cuts.forEach((cut, k) => {
    if (faults.sound(`/cuts/${k}/id`) && faults.sound(`/cuts/${k}/kind`)) known.set(cut.id, cut);
  });
  // A cut whose own name or kind is at fault may be the one that is meant.
  const sure = known.size === cuts.length;
  const users = new Map<string, string>();
  return tools.flatMap((tool, i) =>
    tool.cuts.flatMap((id, k): JobIssue[] => {
      const path = `/tools/${i}/cuts/${k}`;
      const cut = known.get(id);
      if (cut === undefined) {
        if (!sure) return [];
        return [{ path, message: `is ${described(id)}, but no cut has that id${listed([...known.keys()])}` }];
      }
      const user = users.get(id);
      users.set(id, tool.id);
      if (user !== undefined) {
        return [
          { path, message: `names cut ${described(id)}, which tool ${described(user)} makes; leave one out` },
        ];
      }
      if (FITS[cut.kind].includes(tool.kind)) return [];
      const message = `names ${described(id)}, ${KIND_NAME[cut.kind]}; its tool must be ${choices(FITS[cut.kind])}`;
      return [{ path, message }];
    }),
  );
}
