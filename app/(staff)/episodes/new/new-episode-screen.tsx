'use client';

import { useEffect, useRef, useState, type FormEvent, type KeyboardEvent } from 'react';
import type { ProcedurePhoto, Started } from '@/lib/care/start-contract';
import type { StartForm } from '@/lib/server/load-start';
import { localInstant } from '../../../(patient)/_queue/local-instant';
import { Button } from '../../../_components/button';
import { Choice } from '../../../_components/choice';
import { Field } from '../../../_components/field';
import { Notice } from '../../../_components/notice';
import { HandOutScreen } from '../../_hand-out/hand-out-screen';
import { sendProcedurePhoto } from '../../_hand-out/send-procedure-photo';
import styles from './new-episode.module.css';
import { PhotoField } from './photo-field';
import { ANTIBIOTIC, BLOCK, EDGE, FAILS, FELT, FOOT, LANGUAGE, MATRIX, RISK, SEEN, SIDE, STRIP } from './start-choices';
import { missingIn, startBody, type StartDraft } from './start-draft';
import { TimeField } from './time-field';

const emptyDraft = ({ language, plans }: StartForm): StartDraft => ({
  at: '',
  foot: '',
  sides: [],
  strip: '',
  edge: '',
  pus: '',
  bone: '',
  matrix: '',
  block: '',
  blockAt: '',
  fails: '',
  risks: [],
  antibiotic: '',
  antibioticAt: '',
  language,
  birthYear: '',
  plan: plans.at(0)?.id ?? '',
});

type Photos = Readonly<Partial<Record<ProcedurePhoto, File>>>;

/** One screen for a new episode: nothing that is not chosen is taken for a no, and no name is asked. */
export function NewEpisodeScreen({ form }: { readonly form: StartForm }) {
  const [draft, setDraft] = useState(() => emptyDraft(form));
  const [photos, setPhotos] = useState<Photos>({});
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const [done, setDone] = useState<{ started: Started; unsent: readonly string[] } | null>(null);
  const id = useRef('');
  const page = useRef<HTMLFormElement>(null);

  useEffect(() => {
    id.current = crypto.randomUUID();
    setDraft((before) => ({ ...before, at: localInstant(Date.now()).slice(0, 16) }));
    page.current?.querySelector('input')?.focus();
  }, []);

  const set = (change: Partial<StartDraft>) => setDraft((before) => ({ ...before, ...change }));
  const one = (key: 'foot' | 'strip' | 'edge' | 'pus' | 'bone' | 'matrix' | 'block' | 'fails' | 'antibiotic' | 'language' | 'plan') => ({
    chosen: draft[key] === '' ? [] : [draft[key]],
    onChoose: (value: string) => set({ [key]: value }),
    wrap: true,
  });
  const several = (key: 'sides' | 'risks') => ({
    chosen: draft[key],
    onChoose: (value: string, on: boolean) => set({ [key]: on ? [...draft[key], value] : draft[key].filter((other) => other !== value) }),
    wrap: true,
    many: true,
  });

  async function start(): Promise<void> {
    const missing = missingIn(draft);
    setProblem(missing ?? '');
    if (busy || missing !== null) return;
    setBusy(true);
    const response = await fetch('/api/staff/episodes', { method: 'POST', body: JSON.stringify(startBody(id.current, draft)) }).catch(() => null);
    if (response?.ok) {
      const started = (await response.json()) as Started;
      const kinds = Object.entries(photos) as [ProcedurePhoto, File][];
      const sent = await Promise.all(kinds.map(async ([kind, file]) => ({ kind, isSent: await sendProcedurePhoto(started.episodeId, kind, file) })));
      setDone({ started, unsent: sent.filter(({ isSent }) => !isSent).map(({ kind }) => kind) });
    } else setProblem(await problemWords(response));
    setBusy(false);
  }
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void start();
  };
  const keys = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) void start();
  };

  if (done !== null) return <StartedScreen {...done} photos={photos} />;
  return (
    <main className={styles.page}>
      <header>
        <h1>Start an episode</h1>
        <p className={styles.soft}>One toe, one case code. No name and no date of birth is kept here. What is not chosen is kept as not recorded.</p>
      </header>
      <form ref={page} className={styles.form} onSubmit={submit} onKeyDown={keys} noValidate>
        <section className={styles.part} aria-labelledby="done">
          <h2 id="done">What was done</h2>
          <Choice legend="Big toe" options={FOOT} {...one('foot')} />
          <Choice legend="Side (needed)" options={SIDE} {...several('sides')} />
          <Choice legend="Strip of nail removed" options={STRIP} {...one('strip')} />
          <Choice legend="Matricectomy (needed)" options={MATRIX} {...one('matrix')} />
          <Choice legend="Anaesthetic given" options={BLOCK} {...one('block')} />
          {draft.block === 'other' ? <TimeField label="Anaesthetic given at" value={draft.blockAt} onChange={(blockAt) => set({ blockAt })} /> : null}
          <Choice legend="Antibiotic" options={ANTIBIOTIC} {...one('antibiotic')} />
          {draft.antibiotic === 'other' ? <TimeField label="Antibiotic started at" value={draft.antibioticAt} onChange={(value) => set({ antibioticAt: value })} /> : null}
          <TimeField label="Time of the procedure (needed)" value={draft.at} onChange={(at) => set({ at })} />
        </section>
        <section className={styles.part} aria-labelledby="found">
          <h2 id="found">What was found, what comes next</h2>
          <Choice legend="Edge left behind" options={EDGE} {...one('edge')} />
          <Choice legend="Pus" options={SEEN} {...one('pus')} />
          <Choice legend="Bone" options={FELT} {...one('bone')} />
          <Choice legend="If the partial removal fails" options={FAILS} {...one('fails')} />
          <Choice legend="At risk because of" options={RISK} {...several('risks')} />
        </section>
        <section className={styles.part} aria-labelledby="gets">
          <h2 id="gets">What the patient gets</h2>
          <Choice legend="Language" options={LANGUAGE} {...one('language')} />
          {form.asksBirthYear ? <Field label="Year of birth (needed)" hint="Asked after the link, so that nobody else opens the page." numeric maxLength={4} value={draft.birthYear} onChange={(birthYear) => set({ birthYear })} /> : null}
          <Choice legend="Plan (needed)" options={form.plans.map(({ id: value, name, words }) => ({ value, label: <Plan name={name} words={words} /> }))} {...one('plan')} wrap={false} />
          {form.plans.length === 0 ? <Notice title="This clinic offers no plan yet. A lead clinician adds one under “Clinic”." /> : null}
          <PhotoField label="Photo before the procedure" hint="With the card. Redness that was there already is seen on it." file={photos.before} onPick={(before) => setPhotos({ ...photos, before })} />
          <PhotoField label="Photo straight after" hint="With the card." file={photos.after} onPick={(after) => setPhotos({ ...photos, after })} />
        </section>
        <div className={styles.foot}>
          <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
          <Button look="main" type="submit" aria-disabled={busy}>
            {busy ? 'Starting …' : 'Start the episode'}
          </Button>
          <p className={styles.soft}>Ctrl Enter does the same from anywhere on the page.</p>
        </div>
      </form>
    </main>
  );
}

const Plan = ({ name, words }: { readonly name: string; readonly words: string }) => (
  <>
    {name}
    <span className={styles.planWords}>{words}</span>
  </>
);

function StartedScreen({ started, unsent, photos }: { readonly started: Started; readonly unsent: readonly string[]; readonly photos: Photos }) {
  const { episodeId, caseCode, cardSerial, link } = started;
  const card = { serial: cardSerial, madeAt: 'just now', barReadsMm: null, retiredAt: null };
  const sent = Object.keys(photos).filter((kind) => !unsent.includes(kind)).map((kind) => ({ kind, at: 'just now', state: 'not measured yet' }));
  return (
    <HandOutScreen handOut={{ episodeId, caseCode, linkUntil: null, cards: [card], photos: sent }} link={link} isNew>
      {unsent.map((kind) => (
        <Notice key={kind} title={`The photo ${kind === 'before' ? 'before the procedure' : 'straight after'} was not kept. Send it again below.`} />
      ))}
    </HandOutScreen>
  );
}

async function problemWords(response: Response | null): Promise<string> {
  const said = (await response?.json().catch(() => null)) as { problem?: string; sentence?: string } | null;
  if (said?.problem === 'startedAlready') return 'This episode was started already. Its link was told once: make a new one on the page of the case.';
  return said?.sentence ?? 'The server did not take this. Nothing was kept; try again.';
}
