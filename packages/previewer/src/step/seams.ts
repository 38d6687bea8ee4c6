import type { Report } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';

/** Where a step meets the other half of its bore, with the step that may stay there: told of the second of both. */
export function seamLines({ seams, steps, units }: Report, index: number): string[] {
  const own = steps[index]?.cut;
  const last = (cut: string) => steps.findLastIndex((step) => step.cut === cut);
  return seams.flatMap(({ cuts, step }) => {
    const other = cuts.find((cut) => cut !== own);
    const isSecond = Math.max(...cuts.map(last)) === index && cuts.some((cut) => cut === own);
    if (!isSecond || other === undefined) return [];
    const may =
      step === null
        ? ''
        : `: a step of up to ${lengthText(step.worst, units)} may stay between them, ${lengthText(step.rss, units)} by root of squares`;
    return [`Meets cut ${other} from the other side${may}.`];
  });
}
