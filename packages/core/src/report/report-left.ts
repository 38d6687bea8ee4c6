import * as z from 'zod';
import { amount, figure, place, source } from '../document/schema-parts.js';
import { once } from '../memory/once.js';
import { edgeBreakSchema } from './report-breaks.js';
import { breakOffSchema } from './report-running.js';
import { intervalSchema } from './report-setups.js';
import { regionSchema } from './report-shapes.js';

const index = once(() => z.int().min(0));

const slabIndex = once(() => index().meta({ description: 'Index into slabs.' }));

const pieceId = once(() => z.string().meta({ description: 'id of a piece.' }));

const between = once(() =>
  z.tuple([source(), source()]).meta({ description: 'What the two edges came from.' }),
);

/** A slab of the part, between two heights at which something changes. */
export const slabSchema = once(() =>
  z.object({
    from: amount().meta({ description: 'Height of its lower face over the bottom of the part.' }),
    to: amount().meta({ description: 'Height of its upper face over the bottom of the part.' }),
    area: amount().meta({ description: 'Area of the metal left in it.' }),
  }),
);

const sectionSchema = once(() => z.object({ from: amount(), to: amount(), region: regionSchema() }));

/** A piece of metal that is left. */
export const pieceSchema = once(() =>
  z.object({
    id: pieceId(),
    label: z.string().meta({ description: 'What a drawing calls it.' }),
    role: z.enum(['kept', 'slug', 'held slug', 'hanging', 'offcut']),
    area: amount().meta({ description: 'Area of its plan view.' }),
    perimeter: amount().meta({ description: 'Length of the boundary of its plan view, holes included.' }),
    volume: amount(),
    mass: amount().nullable().meta({ description: 'In massUnit; null if the material is not known.' }),
    bounds: z
      .tuple([figure(), figure(), figure(), figure()])
      .meta({ description: '[min x, min y, max x, max y]' }),
    holes: index().meta({ description: 'How many holes its plan view has.' }),
    freedBy: z.string().nullable().meta({ description: 'id of the cut that freed it; null if none did.' }),
    horns: z.array(index()).meta({ description: 'Its own knife edges: indices into knifeEdges.' }),
    view: regionSchema().meta({ description: 'Its plan view: the union of its sections.' }),
    sections: z.array(sectionSchema()).meta({
      description: 'Its sections, going up; slabs in which it is the same are one.',
    }),
  }),
);

/** A neck of metal under the limit. */
export const webSchema = once(() =>
  z.object({
    thickness: amount().meta({ description: 'Diameter of the disc that just fits the neck.' }),
    at: place().meta({ description: 'Middle of that disc.' }),
    ends: z.tuple([place(), place()]).meta({ description: 'Where that disc touches the two edges.' }),
    between: between(),
    interval: intervalSchema().meta({
      description:
        'Between what its thickness can lie; below 0 the cuts meet. null without setups of its cuts.',
    }),
    length: amount().meta({ description: 'How far along the neck the metal stays under the limit.' }),
    strip: amount().meta({ description: 'How far the thickness stays the same; 0 for a neck at a point.' }),
    slab: slabIndex(),
    piece: pieceId(),
    breakOff: breakOffSchema().nullable().meta({
      description:
        'To break it in its slab, sideways; an estimate. null where the strength of the material is not known.',
    }),
  }),
);

/** A sharp corner of metal under the limit. */
export const knifeEdgeSchema = once(() =>
  z.object({
    angle: amount().meta({ description: 'Degrees through metal, between the tangents at the tip.' }),
    interval: intervalSchema().meta({
      description: 'Between what its angle can lie, degrees. null without setups of its cuts.',
    }),
    at: place().meta({ description: 'The tip.' }),
    between: between(),
    feather: amount().nullable().meta({
      description:
        'How far in from the tip the metal is thinner than the web limit, up to the middle of the disc of that diameter that touches both edges; null where no such disc fits.',
    }),
    break: edgeBreakSchema().meta({
      description:
        'How to break it, so that it is no knife edge and no metal thinner than the web limit is left.',
    }),
    slab: slabIndex(),
    piece: pieceId(),
  }),
);

/** Metal left where a cut stops short. */
export const floorSchema = once(() =>
  z.object({
    thickness: amount().meta({ description: 'Metal left under (or over) the cut.' }),
    interval: intervalSchema().meta({
      description:
        'Between what that can lie; below 0 the cut goes through. null where its cut is in no setup, or in one without a zero in Z.',
    }),
    area: amount(),
    under: z.string().meta({ description: 'id of the cut that stops short.' }),
    holds: pieceId().nullable().meta({ description: 'id of the slug that it holds; null if none.' }),
    kerfLength: amount().nullable().meta({
      description:
        'Length along which the floor would have to break to let the slug go; null if it holds none.',
    }),
    at: place().meta({ description: 'A place on the floor.' }),
    slab: slabIndex(),
    breakOff: breakOffSchema().nullable().meta({
      description:
        'To break the slug out that it holds; an estimate. null if it holds none, or where the strength of the material is not known.',
    }),
  }),
);
