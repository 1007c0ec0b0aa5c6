'use client';

import { useEffect, useRef } from 'react';
import type { ReviewCase } from '@/lib/server/review-case';
import { Button } from '../../_components/button';
import { Notice } from '../../_components/notice';
import { LevelMark } from './level-mark';
import { PhotoView } from './photo-view';
import { ReachLine, reachWords } from './reach-line';
import { ResolveForm } from './resolve-form';
import styles from './review.module.css';
import { useCase, type Holder } from './use-case';

interface PanelProps {
  readonly episodeId: string;
  readonly onClose: () => void;
  readonly onResolved: (words: string) => void;
}

/** One case beside the list. */
export function CasePanel({ episodeId, onClose, onResolved }: PanelProps) {
  const { shown, holder, problem, reload, takeOver } = useCase(episodeId);
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (shown !== null) title.current?.focus();
  }, [shown?.episodeId]);

  return (
    <section className={styles.panel} aria-label={shown === null ? 'Case' : `Case ${shown.caseCode}`}>
      <div className={styles.panelHead}>
        <h2 ref={title} tabIndex={-1}>
          {shown === null ? 'Opening …' : `${shown.caseCode}, day ${shown.day}`}
        </h2>
        {shown === null ? null : <a href={`/episodes/${encodeURIComponent(shown.caseCode)}`}>Whole episode</a>}
        <Button look="plain" onClick={onClose}>
          Close <kbd>Esc</kbd>
        </Button>
      </div>
      {problem === '' ? null : (
        <Notice live title={problem}>
          <Button onClick={() => void reload()}>Try again</Button>
        </Notice>
      )}
      {holder === null ? null : <HeldByOther holder={holder} onTakeOver={() => void takeOver()} />}
      {shown === null ? null : <CaseBody shown={shown} held={holder !== null} reload={reload} onResolved={onResolved} />}
    </section>
  );
}

function HeldByOther({ holder, onTakeOver }: { readonly holder: Holder; readonly onTakeOver: () => void }) {
  const since = new Date(holder.since).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return (
    <Notice live title={`${holder.by} has had this case open since ${since}.`}>
      <p>You can read it. To work on it yourself, speak with them first, then take it over.</p>
      <Button onClick={onTakeOver}>Take over</Button>
    </Notice>
  );
}

interface BodyProps {
  readonly shown: ReviewCase;
  readonly held: boolean;
  readonly reload: () => Promise<void>;
  readonly onResolved: (words: string) => void;
}

function CaseBody({ shown, held, reload, onResolved }: BodyProps) {
  return (
    <>
      <div className={styles.look}>
        <Findings findings={shown.findings} />
        <PhotoView photos={shown.photos} />
        <ResolveForm shown={shown} held={held} reload={reload} onResolved={onResolved} />
      </div>
      <CheckIns shown={shown} />
      <section className={styles.part} aria-label="Course">
        <h3>Reach so far</h3>
        <div className={styles.course}>
          <ReachLine reach={shown.reach} />
        </div>
        <p className={styles.small}>{reachWords(shown.reach)}</p>
      </section>
      <Procedure shown={shown} />
      <Earlier shown={shown} />
    </>
  );
}

/** The first says why it is here; what else is open stands behind a line that says how much. */
function Findings({ findings }: { readonly findings: ReviewCase['findings'] }) {
  const [first, ...others] = findings;
  if (first === undefined) return <p>Nothing is open on this case any more.</p>;
  return (
    <div className={styles.findings}>
      <Finding finding={first} />
      {others.length === 0 ? null : (
        <details>
          <summary className={styles.summary}>
            And {others.length} more: {others.map(({ name }) => name).join('; ')}
          </summary>
          <div className={styles.findings}>
            {others.map((finding) => (
              <Finding key={finding.id} finding={finding} />
            ))}
          </div>
        </details>
      )}
    </div>
  );
}

function Finding({ finding }: { readonly finding: ReviewCase['findings'][number] }) {
  const { level, levelWords, name, sentence, limits, since, ruleBookVersion, raisedForRisk } = finding;
  return (
    <div className={styles.finding}>
      <p className={styles.findingHead}>
        <LevelMark level={level} />
        <strong>{name}</strong>
        <span>{levelWords}</span>
      </p>
      <p>{sentence}</p>
      <p className={styles.small}>
        Since {since}.{raisedForRisk ? ' One level higher because this foot is at risk.' : ''}
        {limits.length > 0 ? ` Rule: ${limits.join('; ')}.` : ''}
        {ruleBookVersion === '' || ruleBookVersion === 'no rule' ? '' : ` Rule book ${ruleBookVersion}.`}
      </p>
    </div>
  );
}

function CheckIns({ shown }: { readonly shown: ReviewCase }) {
  return (
    <section className={styles.part} aria-label="What the patient says">
      <h3>What the patient says</h3>
      {shown.checkIns.length === 0 ? <p>No answers yet.</p> : null}
      {shown.checkIns.map(({ at, answers, worry }) => (
        <div key={at} className={styles.checkIn}>
          <p className={styles.small}>{at}</p>
          {worry === null || worry === '' ? null : <blockquote className={styles.worry}>{worry}</blockquote>}
          <dl className={styles.answers}>
            {answers.map(({ name, words }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{words}</dd>
              </div>
            ))}
          </dl>
        </div>
      ))}
    </section>
  );
}

function Procedure({ shown }: { readonly shown: ReviewCase }) {
  const risks = shown.risks.length > 0 ? shown.risks.join(', ') : 'none recorded';
  return (
    <section className={styles.part} aria-label="Procedure">
      <h3>Procedure</h3>
      <dl className={styles.answers}>
        {[...shown.facts, { name: 'Risks', words: risks }].map(({ name, words }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function Earlier({ shown }: { readonly shown: ReviewCase }) {
  if (shown.earlier.length === 0) return null;
  return (
    <section className={styles.part} aria-label="Done before">
      <h3>Done before</h3>
      <ul className={styles.earlier}>
        {shown.earlier.map(({ at, by, action, about, reason }) => (
          <li key={`${at} ${about}`}>
            <span className={styles.small}>
              {at}, {by}
            </span>
            <br />
            {action}: {about}. {reason}
          </li>
        ))}
      </ul>
    </section>
  );
}
