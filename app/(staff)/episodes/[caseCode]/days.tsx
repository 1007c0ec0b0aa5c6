import type { ShownDay } from '../../../../lib/server/shown-episode';
import { DataTable } from '../../../_components/data-table';
import styles from './episode-screen.module.css';

const COLUMNS = ['Day', 'Sent', 'Pain', 'Dressing', 'Discharge', 'Smell', 'Temperature', 'Signs', 'In their words', 'Photo'];

/** Day by day: what the person at home said. */
export function Days({ days }: { readonly days: readonly ShownDay[] }) {
  return (
    <section aria-labelledby="days" className={styles.onScreen}>
      <h2 id="days">Day by day</h2>
      {days.length === 0 ? (
        <p>No check-in has come yet.</p>
      ) : (
        <DataTable
          caption="Answers from home, oldest first; an empty cell was not asked or not answered"
          columns={COLUMNS}
          rows={days.map(({ key, day, at, answers, worry, photo }) => ({
            key,
            cells: [day, at, answers.pain, answers.wetness, answers.discharge, answers.smell, answers.temperature, answers.signs, worry, photo],
          }))}
        />
      )}
    </section>
  );
}
