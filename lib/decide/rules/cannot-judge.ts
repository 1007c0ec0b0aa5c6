import { gateWords } from '../../photo/gate-words';
import { answeredAt } from '../answered';
import { compareReaches } from '../compare';
import type { Raised } from '../finding';
import { newestTwoOf } from '../newest-two';
import type { Rule, View } from '../view';
import { visitValue, visitValueOfReach } from '../visit-value';
import type { Visit } from '../visits';

const HIDDEN: readonly string[] = ['contrastTooLow', 'evidenceTooWeak'];

/** The photo could be used, and redness could not be seen on it. A photo with nothing found is not meant. */
function isRednessHidden(visit: Visit): boolean {
  if (visitValueOfReach(visit) || visitValue(visit, 'erythemaArea')) return false;
  return visit.usablePhotos.some(({ measurements: { reach, erythemaArea } }) =>
    [reach, erythemaArea].some((found) => found !== undefined && 'notMeasured' in found && HIDDEN.includes(found.notMeasured)),
  );
}

/** Two visits in a row without a usable photo, or on which redness can't be seen: a call tells more. */
function judge({ visits, limits }: View): Raised | null {
  const counts = (visit: Visit) => visit.closed && compareReaches(visit.startHours, limits['dressing.staysHours']);
  const withoutPhoto = newestTwoOf(visits, counts);
  const unseen = newestTwoOf(visits, (visit) => counts(visit) && visit.usablePhotos.length > 0);
  const noPhoto = withoutPhoto.length > 1 && withoutPhoto.every(({ usablePhotos }) => usablePhotos.length === 0);
  const hidden = unseen.length > 1 && unseen.every(isRednessHidden);
  if (!noPhoto && !hidden) return null;
  const pair = noPhoto ? withoutPhoto : unseen;
  const reasons = [...new Set(pair.flatMap(({ photos }) => photos.flatMap((photo) => photo.reasons.map(gateWords))))];
  return {
    level: 'soon',
    knownHours: pair[1].closesHours,
    numbers: [{ name: 'visits', value: pair.length, unit: '1' }],
    photos: pair.flatMap(({ photos }) => photos.map(({ name }) => name)),
    checkIns: answeredAt(pair),
    sentence: noPhoto
      ? `Two visits in a row have no photo that can be used${reasons.length > 0 ? ` (${reasons.join(', ')})` : ''}: call instead.`
      : 'On two visits redness cannot be seen at this skin tone and light: call instead.',
  };
}

export const CANNOT_JUDGE: Rule = { id: 'cannot-judge', kind: 'administrative', ownRiskLevel: false, highest: 'soon', judge };
