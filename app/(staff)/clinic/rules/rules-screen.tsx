'use client';

import { useState } from 'react';
import type { RuleBookPage, ShownLimit } from '@/lib/server/load-rule-book';
import { Button } from '../../../_components/button';
import styles from '../_clinic/clinic.module.css';
import { LimitForm } from './limit-form';

/** The clinic's limits, each with its range and its source; what was changed when, by whom and why. */
export function RulesScreen({ page }: { readonly page: RuleBookPage }) {
  const [open, setOpen] = useState<string | null>(null);
  const { version, number, limits, versions, mayChange } = page;
  return (
    <main className={styles.page}>
      <header>
        <h1>Rule book</h1>
        <p>
          In force: version {version}. {number === 0 ? 'Nothing has been changed here.' : `Changed ${number === 1 ? 'once' : `${number} times`}.`}
        </p>
        <p className={styles.soft}>
          A limit can be moved within its range. No rule can be switched off, and the rules for warning signs least of all. Each finding keeps the version that it was made by.
          {mayChange ? '' : ' Only a lead clinician changes it.'}
        </p>
      </header>
      <section aria-labelledby="changes">
        <h2 id="changes">What was changed</h2>
        {versions.length === 0 ? <p>Nothing yet: these are the limits that came with the program.</p> : null}
        <ul className={styles.list}>
          {versions.map(({ number: which, at, by, reason, changes }) => (
            <li key={which} className={styles.row}>
              <div className={styles.wide}>
                <p className={styles.name}>
                  Version {which}, {at}, {by}
                </p>
                {changes.map((one) => (
                  <p key={one}>{one}</p>
                ))}
                <p>Why: {reason}</p>
              </div>
            </li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="limits">
        <h2 id="limits">The limits</h2>
        <ul className={styles.list}>
          {limits.map((limit) => (
            <li key={limit.id} className={styles.row}>
              <Limit limit={limit} />
              {mayChange ? (
                <Button aria-expanded={open === limit.id} aria-label={`Change: ${limit.name}`} onClick={() => setOpen(open === limit.id ? null : limit.id)}>
                  Change
                </Button>
              ) : null}
              {open === limit.id ? <LimitForm limit={limit} from={number} onCancel={() => setOpen(null)} /> : null}
            </li>
          ))}
        </ul>
      </section>
    </main>
  );
}

function Limit({ limit: { name, value, unit, usual, least, most, source } }: { readonly limit: ShownLimit }) {
  return (
    <div>
      <p>
        <span className={styles.name}>{name}: </span>
        <span className={styles.value}>
          {value} {unit}
        </span>
        {value === usual ? '' : `, usually ${usual}`}
      </p>
      <p className={styles.soft}>
        From {least} to {most} {unit}. Source: {source}.
      </p>
    </div>
  );
}
