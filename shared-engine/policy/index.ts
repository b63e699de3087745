// The policy layer: what a seat of some style would pass.

export { type ChoiceModel, createChoiceModel } from './choice-model.ts';
export { RISK_GRADES, type RiskGrade, riskGrade } from './pass-risk.ts';
export {
  createRackScorer,
  legalPasses,
  lowRiskTiles,
  type RackScorer,
  type Removal,
  removals,
} from './pass-selection.ts';
export { createSteadySelection, type SteadyPass } from './steady.ts';
export { type NearnessStyle, type RolloutStyle, STYLE_DATA, STYLES, type StyleName } from './styles.ts';
