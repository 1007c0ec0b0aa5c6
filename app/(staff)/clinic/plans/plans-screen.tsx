'use client';

import { useState } from 'react';
import type { PlansPage } from '@/lib/server/load-plans';
import { Button } from '../../../_components/button';
import { Notice } from '../../../_components/notice';
import styles from '../_clinic/clinic.module.css';
import { PlanForm } from './plan-form';

/** The regimens to choose from when an episode is started. A change is for new episodes: what patients have stays. */
export function PlansScreen({ page: { plans, mayChange } }: { readonly page: PlansPage }) {
  const [open, setOpen] = useState<string | null>(null);
  const [problem, setProblem] = useState('');

  async function send(body: unknown): Promise<void> {
    const response = await fetch('/api/staff/plans', { method: 'POST', body: JSON.stringify(body) }).catch(() => null);
    if (response?.ok) return window.location.reload();
    const said = (await response?.json().catch(() => null)) as { sentence?: string } | null;
    setProblem(said?.sentence ?? 'The server did not take this. Nothing was changed.');
  }

  return (
    <main className={styles.page}>
      <header>
        <h1>Plans</h1>
        <p className={styles.soft}>Regimens differ from clinic to clinic. A change is for new episodes; what patients have on paper stays.{mayChange ? '' : ' Only a lead clinician changes them.'}</p>
      </header>
      <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
      <ul className={styles.list}>
        {plans.map(({ id, name, plan, words, made }) => (
          <li key={id} className={styles.row}>
            <div>
              <p className={styles.name}>{name}</p>
              <p>{words}</p>
              {plan.notes ? <p>“{plan.notes}”</p> : null}
              <p className={styles.soft}>{made}</p>
            </div>
            {mayChange ? (
              <div className={styles.tools}>
                <Button aria-label={`Change: ${name}`} aria-expanded={open === id} onClick={() => setOpen(open === id ? null : id)}>
                  Change
                </Button>
                <Button aria-label={`Offer no longer: ${name}`} onClick={() => void send({ step: 'retire', id })}>
                  Offer no longer
                </Button>
              </div>
            ) : null}
            {open === id ? <PlanForm first={{ name, plan }} onKeep={(template) => void send({ step: 'change', id, template })} onCancel={() => setOpen(null)} /> : null}
          </li>
        ))}
      </ul>
      {mayChange && open !== 'new' ? (
        <div>
          <Button onClick={() => setOpen('new')}>Add a plan</Button>
        </div>
      ) : null}
      {open === 'new' ? <PlanForm first={{ name: '', plan: plans[0]?.plan }} onKeep={(template) => void send({ step: 'add', template })} onCancel={() => setOpen(null)} /> : null}
    </main>
  );
}
