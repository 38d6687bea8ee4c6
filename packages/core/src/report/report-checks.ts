import * as z from 'zod';
import { amount, figure, place, source } from '../document/schema-parts.js';
import { once } from '../memory/once.js';

const pair = (description: string) => z.tuple([figure(), figure()]).meta({ description });

const waySchema = once(() =>
  z.object({
    kind: z.enum([
      'depth',
      'left',
      'to pins',
      'pins out',
      'over pins',
      'opening',
      'across',
      'height',
      'round',
      'wall',
    ]),
    words: z.string().min(1).meta({ description: 'What to measure, for people.' }),
    face: z
      .object({
        source: source(),
        at: place().meta({ description: 'A place on it.' }),
        into: pair('Unit vector into the metal.'),
      })
      .nullable()
      .meta({ description: 'The straight face that it is measured from or to; null without one.' }),
    cut: z.string().nullable().meta({ description: 'The cut at the other side of a wall; null for others.' }),
    round: source()
      .nullable()
      .meta({ description: 'The round of the outline to which is measured; null for others.' }),
    pin: amount().nullable().meta({ description: 'Diameter of the pins; null without.' }),
    ball: z.boolean().meta({ description: 'Whether they are balls: they touch at one height, from and to.' }),
    pins: z.int().min(1).max(2).nullable().meta({ description: 'How many; null without.' }),
    under: amount().nullable().meta({
      description: 'Of an opening, how far under the face: 0 from horn to horn. null for others.',
    }),
    along: pair('Of a widest place, the unit vector along which it is read.').nullable().meta({
      description: 'null for others.',
    }),
    chord: amount().nullable().meta({ description: 'Of a height over a chord, the chord; null for others.' }),
    from: amount().meta({
      description: 'Heights between which it can be taken, over the bottom of the part.',
    }),
    to: amount(),
    reading: figure().meta({ description: 'What it should read.' }),
    allowed: pair('[least, most] that the drawing allows of radius and place together.').nullable().meta({
      description: 'null where the drawing gives no tolerances.',
    }),
    byRadius: figure().meta({ description: 'How much the reading grows by for each unit of the radius.' }),
    byPlace: amount().meta({
      description: 'How much it changes at most for each unit that the centre moves.',
    }),
    horn: amount().nullable().meta({
      description: 'Of an opening from horn to horn, the angle of metal there, degrees; null for others.',
    }),
  }),
);

const trialSchema = once(() =>
  z.object({
    tool: z.string().meta({ description: 'id of the boring head.' }),
    dial: z.object({
      step: amount().meta({ description: 'One graduation.' }),
      on: z.enum(['diameter', 'radius']).meta({ description: 'What a graduation changes of the bore.' }),
    }),
    way: z.int().min(0).meta({ description: 'Index into ways: how the trial cut is measured.' }),
    diameter: amount().meta({ description: 'To set the head to for the trial cut.' }),
    leaves: amount().meta({ description: 'What that leaves of the radius.' }),
    reading: figure().meta({ description: 'What the way reads if the head cuts what it is set to.' }),
    good: amount().meta({ description: 'How far a reading may be off, to either side.' }),
    place: amount().meta({
      description: 'How far the centre may be off, by the setups of the cut; 0 where it is in none.',
    }),
    uncertain: amount().meta({
      description: 'How far the radius may be off what a reading tells, by the two.',
    }),
    rows: z
      .array(
        z.object({
          reading: figure(),
          radius: amount().meta({ description: 'That it tells.' }),
          graduations: z.int().min(0).meta({ description: 'To open the head by; 0: leave it.' }),
          turn: amount().meta({ description: 'What the dial goes on by.' }),
          short: pair('[least, most] that the radius then is short of the drawn one.'),
        }),
      )
      .meta({ description: 'Smallest bore first. Between two lines the later one holds.' }),
  }),
);

/** How to measure an arc that a cut leaves. */
export const checkSchema = once(() =>
  z.object({
    cut: z.string().meta({ description: 'id of the cut.' }),
    from: amount().meta({ description: 'Height of the lower end of the wall over the bottom of the part.' }),
    to: amount(),
    center: place(),
    radius: amount(),
    spans: z.array(pair('[from, to] counter-clockwise, degrees.')).meta({
      description: 'Where the arc is, as seen from its centre.',
    }),
    pairs: pair('[least, most] diameter of two like pins that tell the radius side by side in the arc.')
      .nullable()
      .meta({ description: 'null where no pair does.' }),
    refused: z
      .array(
        z.object({
          pin: amount().meta({ description: 'Diameter.' }),
          pins: z.int().min(1).max(2).meta({ description: 'By itself, or two of them side by side.' }),
          why: z.enum(['too large', 'too small', 'touches a horn', 'off the arc']),
          words: z.string().min(1).meta({ description: 'The same for people.' }),
        }),
      )
      .meta({ description: 'Pins of the gauges of the job that do not serve in the arc.' }),
    ways: z.array(waySchema()).meta({ description: 'Those by which the radius shows most first.' }),
    trial: trialSchema().nullable().meta({
      description:
        'A trial cut and the next setting by its reading; null without a boring head that has a dial, or where no way tells it well enough.',
    }),
  }),
);
