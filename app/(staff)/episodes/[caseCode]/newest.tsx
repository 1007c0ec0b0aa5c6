import type { EpisodePage, ShownDay } from '../../../../lib/server/shown-episode';
import { PhotoWithLines } from '../../../_components/photo-with-lines';
import { cardWindow } from './card-window';
import { drawnOn } from './drawn-on';
import styles from './episode-screen.module.css';

/**
 * How the toe looks now, and what was last said of it: what came last, also where it was refused. A course without a
 * measured photo has nothing else to be judged by.
 */
export function Newest({ photos, days }: Pick<EpisodePage, 'photos' | 'days'>) {
  const photo = photos.at(-1);
  const said = days.at(-1);
  return (
    <section aria-labelledby="newest" className={styles.newest}>
      <h2 id="newest">What came last</h2>
      {photo === undefined ? (
        <p>No photo has come yet.</p>
      ) : (
        <figure>
          <PhotoWithLines eager photo={photo} window={cardWindow([photo])} drawn={[drawnOn(photo)]} />
          <figcaption>
            <strong>Photo, day {photo.day}</strong>: {[photo.state, ...photo.versions[0].numbers].join('; ')}.
          </figcaption>
        </figure>
      )}
      {said === undefined ? <p>No answers have come yet.</p> : <Said said={said} />}
    </section>
  );
}

/** The answers that were given; what was not asked has no line. */
function Said({ said: { day, answers, worry } }: { readonly said: ShownDay }) {
  const { pain, wetness, discharge, smell, temperature, signs } = answers;
  const lines = [
    ['Pain', pain === '' ? '' : `${pain} of 10`],
    ['Dressing', wetness],
    ['Discharge', discharge],
    ['Smell', smell],
    ['Temperature', temperature],
    ['Signs', signs],
    ['In their words', worry],
  ].filter(([, words]) => words !== '');
  return (
    <>
      <h3>Answers, day {day}</h3>
      {lines.length === 0 ? <p>No question was answered.</p> : null}
      <dl className={styles.said}>
        {lines.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
