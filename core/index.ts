/** The one door into core: other folders import from here and nowhere deeper. */

export type { AgeDistribution } from './age/ageShares.ts';
export { type ChangeMilestone, type ChangeOver, changeOver } from './age/changeOver.ts';
export { type Lab, labToSrgb, labToXyz, type Srgb, type Xyz, xyzToLab, xyzToSrgb } from './age/cielab.ts';
export { predictColour } from './age/colour.ts';
export { type ColourSweep, type KeptStretch, layerStep, type SweepPoint } from './age/colourSweep.ts';
export type { ColourDetail, ColouredMaterial, ColourRange, MeltHeat } from './age/colourTypes.ts';
export { deltaE2000 } from './age/deltaE2000.ts';
export { browningIndex, yellownessE313 } from './age/indices.ts';
export { type Extent, extentAlong, type HeatSegment, molarMassAfter } from './age/kinetics.ts';
export type { KineticLaw, LagLaw, RichLaw, ScissionLaw, TwoStepLaw } from './age/laws.ts';
export { applyCalibration, type CalibrationChoice } from './bench/applyCalibration.ts';
export { type BenchRow, benchRows } from './bench/benchRows.ts';
export {
  type BenchColumn,
  type BenchContext,
  type BenchCsvChoices,
  type BenchField,
  type BenchImport,
  benchContext,
  type CsvFault,
} from './bench/csvTypes.ts';
export { fitCalibration } from './bench/fitCalibration.ts';
export type { CalibrationFit, FitTrial, ObservationKind, TrialModel } from './bench/fitTypes.ts';
export { type PhotoColour, photoCaveats, photoColour, type RegionMean, regionMean } from './bench/photoLab.ts';
export { planCandidates, setTemperatures } from './bench/planCandidates.ts';
export { type PlannedTrial, type PlanOptions, planTrials, type TrialPlan } from './bench/planTrials.ts';
export { readBenchCsv } from './bench/readBenchCsv.ts';
export {
  type FieldRatios,
  fieldRatios,
  freshColour,
  measuredFigures,
  type PredictedTrial,
  predictTrial,
} from './bench/trialFigures.ts';
export { type TrialSheet, trialSheet } from './bench/trialSheet.ts';
export { type BenchCsvStyle, writeBenchCsv } from './bench/writeBenchCsv.ts';
export { checks } from './checks/checks.ts';
export { checkCounts, runCheck } from './checks/runCheck.ts';
export { type Check, type CheckKind, type CheckResult, type CheckStage, checkStages } from './checks/types.ts';
export {
  type AccountTopic,
  type BetterForWhat,
  betterForWhat,
  type RefusedRevision,
  type TopicAccount,
} from './compare/account.ts';
export {
  type ComparedRow,
  type ComparedValue,
  type Comparison,
  comparePredictions,
  compareTable,
} from './compare/compare.ts';
export {
  type Alignment,
  alignmentShift,
  type DifferingStretch,
  differingStretches,
  type HeadProfile,
  headProfile,
  radiusAt,
} from './compare/headProfile.ts';
export { type CurveOf, type OverlaidCurves, overlayCurves } from './compare/overlaidCurves.ts';
export { comparedText, type NumberWriter } from './compare/quantities.ts';
export { type FactorName, type Factors, factorNames, plainFactors } from './design/calibrate.ts';
export { faultyFileIssues } from './design/inspect.ts';
export type * from './design/types.ts';
export { revisionIssues, validateDesign } from './design/validate.ts';
export { resolveField, valueAt } from './doubt/fieldPath.ts';
export { doubtInputs } from './doubt/inputs.ts';
export { fieldLabel } from './doubt/labels.ts';
export { type DoubtOptions, type DoubtPlan, doubtPlan, sampleRun } from './doubt/sample.ts';
export { summariseDoubt } from './doubt/summary.ts';
export type * from './doubt/types.ts';
export { type GrainPicture, grainPicture } from './feed/grains/grainPicture.ts';
export { findingRules } from './findings/rules.ts';
export { barrelMesh } from './geometry/barrelMesh.ts';
export { barrelVolume, outerStretches } from './geometry/barrelWall.ts';
export { coneAngle, coneLength } from './geometry/cone.ts';
export { creaseNormals, type ShadedTriangles } from './geometry/creaseNormals.ts';
export { eulerNumber, meshArea, meshIsClosed, meshVolume } from './geometry/meshMeasure.ts';
export { nozzleBodyVolume, nozzleMesh } from './geometry/nozzleMesh.ts';
export { channelOutline, channelPolygon, transverseOutline } from './geometry/outlines.ts';
export { screwMesh } from './geometry/screwMesh.ts';
export { buildStations } from './geometry/stations.ts';
export { measureGeometry } from './geometry/summary.ts';
export type {
  AxialOutline,
  GeometrySummary,
  MeasuredMesh,
  MeshOptions,
  PlaneOutline,
  SolidMesh,
  Stations,
} from './geometry/types.ts';
export { allowedOf, checkValues, readOptionWords, startValues } from './handover/check.ts';
export { handoverModules } from './handover/registry.ts';
export { type HandoverPredict, handoverSource, runHandover } from './handover/run.ts';
export type * from './handover/types.ts';
export { contentHash } from './hash.ts';
export type { PredictionTopic, TopicCompleteness } from './material/completenessTypes.ts';
export { designMaterial } from './material/designMaterial.ts';
export { maronPierce } from './material/filler.ts';
export { fitRheology, fittedViscosity } from './material/fit/fitRheology.ts';
export type {
  FitModel,
  FitOptions,
  FittedParameter,
  FitWarning,
  RheologyFit,
  RheologyPoint,
  RheologyTable,
} from './material/fit/fitTypes.ts';
export { type ViscosityLaw, viscosityAt } from './material/viscosityLaw.ts';
export { createFieldCache, type FieldCache } from './path/fieldCache.ts';
export type { ChannelMap, HeadMap, SolvedFields } from './path/viewTypes.ts';
export {
  colourAtPrintSpeed,
  colourAtShift,
  mostPrintSpeed,
  type PausedColour,
  type StudyRun,
  type StudyWay,
  setRun,
  speedSweepOf,
  studyBase,
  studySpeeds,
  temperatureShifts,
  temperatureSweepOf,
  withPauses,
} from './prediction/colourStudy.ts';
export { createNeighbour, type FirstFigures, firstFigures } from './prediction/firstFigures.ts';
export { defaultOptions, type Progress, predict } from './prediction/predict.ts';
export type * from './prediction/types.ts';
export { comparisonJson, comparisonTable } from './present/comparison.ts';
export { type DwellSection, dwellSection, meltStart } from './present/dwellSection.ts';
export { type FigureInput, figureInputs, type InputPartId } from './present/figureInputs.ts';
export { capacityNames } from './present/groups.ts';
export { heldTogether } from './present/heldTogether.ts';
export { predictionJson } from './present/json.ts';
export type { ComparisonJson } from './present/jsonTypes.ts';
export { lookRow } from './present/lookRow.ts';
export { present } from './present/present.ts';
export { type PrintTopicId, printTopicIds, printTopicRows } from './present/printTopics.ts';
export { flightCuts, type SideShape, sideShape } from './present/sideShape.ts';
export { type SpotPlace, spotPlace } from './present/spotPlace.ts';
export { type RadialProfile, radialProfile, type StationSection, stationSection } from './present/stationSection.ts';
export { alignColumns, predictionTable } from './present/table.ts';
export type { PredictionJson, Presentation, PresentedGroup, PresentedRow, PresentedSeries } from './present/types.ts';
export { viscosityCurve } from './present/viscosityCurve.ts';
export { type Difference, projectDifference } from './project/difference.ts';
export { type LawKind, lawKind, materialCompleteness, withLawId, withLawKind } from './project/editLaws.ts';
export { type FieldRange, fieldRange } from './project/fieldRange.ts';
export { fieldUnit } from './project/fieldUnit.ts';
export { findJsonFault } from './project/jsonScan.ts';
export { projectJsonSchema } from './project/jsonSchema.ts';
export { materialFileText, materialFormat, materialVersion, parseMaterialText } from './project/materialFile.ts';
export { type Material, materialSchema, type Sourced, type StoredLaw } from './project/materialSchema.ts';
export { checkProject, parseMaterial, parseProject } from './project/parse.ts';
export { parseRheologyTable } from './project/rheologyTable.ts';
export {
  type Calibration,
  type Project,
  projectFormat,
  projectSchema,
  projectVersion,
  type Revision,
  type SectionInput,
  type Trial,
} from './project/schema.ts';
export { serializeMaterial, serializeProject } from './project/serialize.ts';
export { type RheologyModel, type ShiftKind, withRheologyModel, withShiftKind } from './project/switchRheology.ts';
export { type Assumed, assumedValues } from './project/templates/assumed.ts';
export {
  askRanges,
  type NewProjectAsk,
  newProject,
} from './project/templates/newProject.ts';
export { screwRoom } from './project/templates/room.ts';
export { type ScrewPicture, screwPicture } from './project/templates/screwPicture.ts';
export { type TemplateId, type TemplateScrew, templateIds, templateScrew } from './project/templates/screwTemplates.ts';
export { unknownFields } from './project/unknownFields.ts';
export { channelCaseResults } from './reference/channelCases.ts';
export { referenceIssues } from './reference/entryIssues.ts';
export { readReference } from './reference/readReference.ts';
export { evaluateTipCase } from './reference/tipCases.ts';
export * from './result.ts';
export { overlapOf, withChanges } from './search/changes.ts';
export { evaluateCandidate } from './search/evaluate.ts';
export { figureOf, searchFigures } from './search/figures.ts';
export { goalFigures, proposedLimits } from './search/goals.ts';
export { searchInputs } from './search/inputs.ts';
export { limitStates } from './search/merit.ts';
export { figureChanges, seekResult } from './search/result.ts';
export { seekGoal } from './search/seek.ts';
export { sensitivityCandidates, sensitivityRows } from './search/sensitivity.ts';
export { mostDesigns, sweepPlan } from './search/sweep.ts';
export type * from './search/types.ts';
export * from './units.ts';
export { coreVersion } from './version.ts';
