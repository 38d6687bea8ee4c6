/*
 * Room: generators and laws for property tests, an entry of its own.
 * In: a seed.
 * Out: outlines, cuts, jobs; checks that any result must pass.
 */

export {
  type CheckLawsOptions,
  checkLaws,
  type LawFault,
  type LawName,
  lawNames,
} from './check-laws.js';
export { metalAngles } from './corners.js';
export {
  type Cut,
  type CutCase,
  cutRegion,
  cutRegions,
  type Encoding,
  encodedCircle,
  HALVES,
  OBLIQUE_THIRDS,
  placedCut,
} from './cut-case.js';
export { families, familyNamed } from './families.js';
export { type Family, type FamilyPlan, family, type Picks, placedCase } from './family.js';
export { CLOSE, type Closeness, commonExtent, difference, type PartPrint, printsOf } from './fingerprint.js';
export { jobDocuments, jobDocumentsWithSetup, outlineDocuments, setupDocuments } from './jobs.js';
export {
  AREA_SLACK,
  type Booleans,
  conservesArea,
  countsOnce,
  encodingDoesNotMatter,
  idempotent,
  invariantUnder,
  LawBroken,
  leavesDisjoint,
  orderDoesNotMatter,
  startPointDoesNotMatter,
  validated,
} from './laws.js';
export {
  arcOutlines,
  bowedPolygons,
  boxRegion,
  capsule,
  ells,
  filleted,
  outlines,
  plates,
  rectangles,
  roundedRectangles,
  slots,
} from './outlines.js';
export { booleansOf, type OwnGeometry } from './own.js';
export { areaOf, type Box, boxOf, edgesOf, extentOf, lengthOf, signedArea, windingOf } from './probe.js';
export {
  everyWay,
  halved,
  placed,
  restarted,
  type Similarity,
  transformed,
  UNMOVED,
  type Way,
} from './transform.js';
export { regionFaults, type ValidateOptions, validateRegion } from './validate.js';
