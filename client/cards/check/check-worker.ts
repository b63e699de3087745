// The worker that surveys a card over dealt racks and reports as it goes.
import {
  type CardFile,
  SURVEY_DEALS,
  type SurveyProgress,
  surveyCard,
} from '../../../shared-engine/index.ts';

self.addEventListener(
  'message',
  ({ data }: MessageEvent<{ readonly card: CardFile; readonly seed: string }>) => {
    for (const step of surveyCard(data.card, data.seed, SURVEY_DEALS))
      self.postMessage(step satisfies SurveyProgress);
  },
);
