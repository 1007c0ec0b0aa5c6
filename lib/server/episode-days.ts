import { answersSchema } from '../care/answers';
import type { EpisodeRows } from '../edges/db/read-episode-rows';
import { answerWords } from '../report/answer-words';
import type { EpisodeClock } from './episode-clock';
import type { ShownDay, ShownPhoto } from './shown-episode';

/** Every message from home as it came, oldest first; one that came twice with other words stands twice. */
export function episodeDays({ checkIns, photos }: EpisodeRows, shown: readonly ShownPhoto[], clock: EpisodeClock): ShownDay[] {
  const stateOf = new Map(shown.map(({ id, state }) => [id, state]));
  return checkIns.map((row) => {
    const said = new Date(row.at);
    const own = photos.filter(({ clientId }) => clientId === row.clientId).map(({ id }) => stateOf.get(id) ?? '');
    return {
      key: row.id,
      day: clock.dayOf(said).toFixed(1),
      at: clock.at(said),
      answers: answerWords(answersSchema.parse(JSON.parse(row.answers))),
      worry: row.worry ?? '',
      photo: own.length > 0 ? own.join('; ') : row.hasPhoto ? 'not arrived yet' : 'none',
    };
  });
}
