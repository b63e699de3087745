// The survey layer: what a card is like to play with, measured over dealt racks.

export {
  type CardSurvey,
  SURVEY_DEALS,
  type SurveyProgress,
  surveyCard,
} from './survey.ts';
