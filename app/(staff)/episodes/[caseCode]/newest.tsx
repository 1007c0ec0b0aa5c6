import type { EpisodePage, ShownDay } from '../../../../lib/server/shown-episode';
import { PhotoWithLines } from '../../../_components/photo-with-lines';
import { cardWindow } from './card-window';
import { drawnOn } from './drawn-on';
import styles from './episode-screen.module.css';

/**
 * How the toe looks now, and what was last said of it. The photo need not have been measured: a course without a value has
 * nothing else to be judged by. What came after it, and shows no card to lay it flat by or perhaps another person's toe, is
 * told in words.
 */
export function Newest({ photos, days }: Pick<EpisodePage, 'photos' | 'days'>) {
  const flat = photos.filter(({ cardFromView }) => cardFromView !== null);
  const photo = flat.findLast(({ isHeld }) => !isHeld) ?? flat.at(-1) ?? photos.at(-1);
  const later = photo === undefined ? [] : photos.slice(photos.indexOf(photo) + 1);
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
            <strong>Photo, day {photo.day}</strong>: {photo.state}.
            {later.map(({ day, state }) => ` Then day ${day}: ${state}.`)} {later.length > 0 ? <a href="#photos">All photos</a> : null}
          </figcaption>
        </figure>
      )}
      {said === undefined ? <p>No answers have come yet.</p> : <Said said={said} />}
    </section>
  );
}

/** The answers that were given, signs first; what was not asked has no line. */
function Said({ said: { day, answers, worry } }: { readonly said: ShownDay }) {
  const { pain, wetness, discharge, smell, temperature, signs } = answers;
  const lines = [
    ['Signs', signs],
    ['In their words', worry],
    ['Pain', pain === '' ? '' : `${pain} of 10`],
    ['Temperature', temperature],
    ['Discharge', discharge],
    ['Dressing', wetness],
    ['Smell', smell],
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
