import { betweenText, type KnifeMark, knifeMarks, type Report } from '@edgebite/core';
import { angleText, lengthText, numberText } from '@edgebite/svg';

/**
 * How to break each knife edge, and what that does to the opening: one line each, with what it lies between.
 * @param isPlaced whether its place on the drawing is told; at the machine its mark is enough
 */
export function breakLines(
  report: Report,
  isPlaced = true,
): { readonly between: readonly string[]; readonly line: string }[] {
  return knifeMarks(report).map((mark) => ({
    between: mark.knifeEdge.between,
    line: lineOf(report, mark, isPlaced),
  }));
}

function lineOf({ units, names }: Report, { id, knifeEdge }: KnifeMark, isPlaced: boolean): string {
  const { chamfer, radius, opens } = knifeEdge.break;
  const number = (value: number) => numberText(value, units);
  const length = (value: number) => lengthText(value, units);
  const [x, y] = knifeEdge.at;
  const place = isPlaced ? ` at (${number(x)}, ${number(y)})` : '';
  const name = `${id}, ${angleText(knifeEdge.angle)}°${place} between ${betweenText(knifeEdge.between, names)}`;
  const ways = [
    ...(chamfer === null
      ? []
      : [
          `chamfer ${number(chamfer.leg)} off each edge, a flat of ${length(chamfer.flat)} with corners of ${angleText(chamfer.angles[0])}° and ${angleText(chamfer.angles[1])}°`,
        ]),
    ...(radius === null ? [] : [`radius ${number(radius.radius)}, the tip ${length(radius.back)} back`]),
  ];
  if (ways.length === 0)
    return `${name}: nowhere as thick as the web limit; take the whole tongue off, it cannot be broken.`;
  const grows = opens === null ? [] : [opens.chamfer, opens.radius].filter((by) => by !== null).map(length);
  const opening =
    grows.length === 0 ? '' : ` The opening of ${opens?.cut} grows there by ${grows.join(' or ')}.`;
  return `${name}: ${ways.join('; or ')}.${opening}`;
}
