import type { EpisodePage } from '../../../../lib/server/shown-episode';
import { DataTable } from '../../../_components/data-table';
import styles from './episode-screen.module.css';

/** What staff did and wrote, with who and why. */
export function Words({ messages, resolutions }: Pick<EpisodePage, 'messages' | 'resolutions'>) {
  return (
    <section aria-labelledby="words" className={styles.onScreen}>
      <h2 id="words">Calls, decisions and messages</h2>
      {resolutions.length === 0 ? (
        <p>No call or decision is on record.</p>
      ) : (
        <DataTable
          caption="Calls and decisions, oldest first"
          columns={['When', 'Who', 'About', 'What', 'Why']}
          rows={resolutions.map(({ at, by, rule, action, reason }, place) => ({ key: `${at} ${place}`, cells: [at, by, rule, action, reason] }))}
        />
      )}
      {messages.length === 0 ? (
        <p>No message was sent.</p>
      ) : (
        <DataTable
          caption="Messages to the patient, newest first"
          columns={['When', 'Who', 'Message']}
          rows={messages.map(({ at, by, text }, place) => ({ key: `${at} ${place}`, cells: [at, by, text] }))}
        />
      )}
    </section>
  );
}
