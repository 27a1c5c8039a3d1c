/** The one door into core: other folders import from here and nowhere deeper. */

export { type ChangeMilestone, type ChangeOver, changeOver } from './age/changeOver.ts';
export type { Lab } from './age/cielab.ts';
export { type ColourSweep, type KeptStretch, layerStep, type SweepPoint } from './age/colourSweep.ts';
export { applyCalibration, type CalibrationChoice } from './bench/applyCalibration.ts';
export { type BenchRow, benchRows } from './bench/benchRows.ts';
export {
  type BenchColumn,
  type BenchCsvChoices,
  type BenchField,
  type BenchImport,
  benchContext,
  type CsvFault,
} from './bench/csvTypes.ts';
export { fitCalibration } from './bench/fitCalibration.ts';
export type { CalibrationFit, ObservationKind, TrialModel } from './bench/fitTypes.ts';
export { type PhotoColour, photoCaveats, photoColour, regionMean } from './bench/photoLab.ts';
export { planCandidates, setTemperatures } from './bench/planCandidates.ts';
export { type PlannedTrial, planTrials, type TrialPlan } from './bench/planTrials.ts';
export { readBenchCsv } from './bench/readBenchCsv.ts';
export {
  type FieldRatios,
  fieldRatios,
  freshColour,
  measuredFigures,
  type PredictedTrial,
  predictTrial,
} from './bench/trialFigures.ts';
export { trialSheet } from './bench/trialSheet.ts';
export { writeBenchCsv } from './bench/writeBenchCsv.ts';
export { checks } from './checks/checks.ts';
export { checkCounts, runCheck } from './checks/runCheck.ts';
export { type CheckKind, type CheckResult, checkStages } from './checks/types.ts';
export { betterForWhat } from './compare/account.ts';
export { type ComparedRow, type ComparedValue, comparePredictions } from './compare/compare.ts';
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
export { type FactorName, type Factors, plainFactors } from './design/calibrate.ts';
export { faultyFileIssues } from './design/inspect.ts';
export type * from './design/types.ts';
export { revisionIssues, validateDesign } from './design/validate.ts';
export { doubtInputs } from './doubt/inputs.ts';
export { fieldLabel } from './doubt/labels.ts';
export { numberPlaces } from './doubt/numberPlaces.ts';
export { type DoubtPlan, doubtPlan, sampleRun } from './doubt/sample.ts';
export { summariseDoubt } from './doubt/summary.ts';
export type * from './doubt/types.ts';
export { type GrainPicture, grainPicture } from './feed/grains/grainPicture.ts';
export { barrelMesh } from './geometry/barrelMesh.ts';
export { outerStretches } from './geometry/barrelWall.ts';
export { coneAngle, coneLength } from './geometry/cone.ts';
export { creaseNormals, type ShadedTriangles } from './geometry/creaseNormals.ts';
export { nozzleMesh } from './geometry/nozzleMesh.ts';
export { channelOutline } from './geometry/outlines.ts';
export { screwMesh } from './geometry/screwMesh.ts';
export { buildStations } from './geometry/stations.ts';
export type { AxialOutline, PlaneOutline, SolidMesh } from './geometry/types.ts';
export { allowedOf, readOptionWords, startValues } from './handover/check.ts';
export { handoverModules } from './handover/registry.ts';
export { handoverSource, runHandover } from './handover/run.ts';
export type * from './handover/types.ts';
export { contentHash } from './hash.ts';
export type { PredictionTopic, TopicCompleteness } from './material/completenessTypes.ts';
export { maronPierce } from './material/filler.ts';
export { fitRheology, fittedViscosity } from './material/fit/fitRheology.ts';
export type {
  FitModel,
  FitOptions,
  FittedParameter,
  RheologyFit,
  RheologyPoint,
  RheologyTable,
} from './material/fit/fitTypes.ts';
export { createFieldCache, type FieldCache } from './path/fieldCache.ts';
export type { SolvedFields } from './path/viewTypes.ts';
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
export { predict } from './prediction/predict.ts';
export type * from './prediction/types.ts';
export { comparisonJson, comparisonTable } from './present/comparison.ts';
export { type DwellSection, dwellSection, meltStart } from './present/dwellSection.ts';
export { type FigureInput, figureInputs } from './present/figureInputs.ts';
export { capacityNames } from './present/groups.ts';
export { heldTogether } from './present/heldTogether.ts';
export { predictionJson } from './present/json.ts';
export { lookRow } from './present/lookRow.ts';
export { present } from './present/present.ts';
export { type PrintTopicId, printTopicIds, printTopicRows } from './present/printTopics.ts';
export { flightCuts, type SideShape, sideShape } from './present/sideShape.ts';
export { type SpotPlace, spotPlace } from './present/spotPlace.ts';
export { type RadialProfile, radialProfile, type StationSection, stationSection } from './present/stationSection.ts';
export { alignColumns, predictionTable } from './present/table.ts';
export type { Presentation, PresentedGroup, PresentedRow, PresentedSeries } from './present/types.ts';
export { viscosityCurve } from './present/viscosityCurve.ts';
export { dayText } from './project/dayText.ts';
export { type Difference, projectDifference } from './project/difference.ts';
export { type LawKind, lawKind, materialCompleteness, withLawId, withLawKind } from './project/editLaws.ts';
export { type FieldRange, fieldRange } from './project/fieldRange.ts';
export { fieldUnit } from './project/fieldUnit.ts';
export { findJsonFault } from './project/jsonScan.ts';
export { materialFileText, materialFormat, parseMaterialText } from './project/materialFile.ts';
export type { Material, Sourced } from './project/materialSchema.ts';
export { checkProject, parseMaterial, parseProject } from './project/parse.ts';
export { parseRheologyTable } from './project/rheologyTable.ts';
export type { Calibration, Project, Revision, SectionInput, Trial } from './project/schema.ts';
export { serializeProject } from './project/serialize.ts';
export { type RheologyModel, type ShiftKind, withRheologyModel, withShiftKind } from './project/switchRheology.ts';
export { assumedValues } from './project/templates/assumed.ts';
export { askRanges, type NewProjectAsk, newProject } from './project/templates/newProject.ts';
export { screwRoom } from './project/templates/room.ts';
export { type ScrewPicture, screwPicture } from './project/templates/screwPicture.ts';
export { type TemplateId, type TemplateScrew, templateIds, templateScrew } from './project/templates/screwTemplates.ts';
export { unknownFields } from './project/unknownFields.ts';
export { channelCaseResults } from './reference/channelCases.ts';
export { readReference } from './reference/readReference.ts';
export { evaluateTipCase } from './reference/tipCases.ts';
export * from './result.ts';
export { overlapOf, withChanges } from './search/changes.ts';
export { evaluateCandidate } from './search/evaluate.ts';
export { figureOf, searchFigures } from './search/figures.ts';
export { goalFigures, proposedLimits } from './search/goals.ts';
export { searchInputs } from './search/inputs.ts';
export { limitStates } from './search/merit.ts';
export { seekResult } from './search/result.ts';
export { seekGoal } from './search/seek.ts';
export { sensitivityCandidates, sensitivityRows } from './search/sensitivity.ts';
export { sweepPlan } from './search/sweep.ts';
export type * from './search/types.ts';
export * from './units.ts';
export { coreVersion } from './version.ts';
