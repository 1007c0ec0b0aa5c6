'use client';

import { useEffect, useRef, useState, type ReactNode } from 'react';
import type { HandedLink, ProcedurePhoto } from '@/lib/care/start-contract';
import type { HandOut } from '@/lib/server/load-hand-out';
import { Button, ButtonLink } from '../../_components/button';
import { Notice } from '../../_components/notice';
import { PhotoField } from '../episodes/new/photo-field';
import { CardList } from './card-list';
import styles from './hand-out.module.css';
import { sendProcedurePhoto } from './send-procedure-photo';

interface HandOutProps {
  readonly handOut: HandOut;
  /** Told just now, and forgotten with this page. */
  readonly link: HandedLink | null;
  readonly isNew?: boolean;
  readonly children?: ReactNode;
}

const PHOTO_WORDS: Readonly<Record<string, string>> = { before: 'Before the procedure', after: 'Straight after' };

/** The patient's link, cards and sheet, and the photos of the day. */
export function HandOutScreen({ handOut: first, link: told, isNew = false, children }: HandOutProps) {
  const [handOut, setHandOut] = useState(first);
  const [link, setLink] = useState(told);
  const [said, setSaid] = useState('');
  const [asks, setAsks] = useState<'renew' | 'end' | null>(null);
  const title = useRef<HTMLHeadingElement>(null);
  const { episodeId, caseCode, cards, photos, linkUntil } = handOut;
  const serial = cards.find(({ retiredAt }) => retiredAt === null)?.serial ?? '';
  useEffect(() => title.current?.focus(), []);

  const post = (what: string, body: unknown) => fetch(`/api/staff/episodes/${episodeId}/${what}`, { method: 'POST', body: JSON.stringify(body) }).catch(() => null);

  async function print(secret: string | null, of: string): Promise<void> {
    const response = await post('sheet', { secret, serial: of });
    if (!response?.ok) return setSaid('The sheet could not be made. Is the link still the newest? Make a new one.');
    const address = URL.createObjectURL(await response.blob());
    Object.assign(document.createElement('a'), { href: address, download: `${caseCode}.pdf` }).click();
    setSaid(`${caseCode}.pdf has been made: ${secret === null ? 'the card' : 'card and aftercare sheet'}. Print it at 100 %.`);
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  }

  async function changeLink(step: 'renew' | 'end'): Promise<void> {
    setAsks(null);
    const response = await post('link', { step });
    if (!response?.ok) return setSaid('The server did not take this. The link is as it was.');
    setLink(((await response.json()) as { link: HandedLink | null }).link);
    setHandOut({ ...handOut, linkUntil: null });
    setSaid(step === 'end' ? 'The link has ended, on every phone.' : 'There is a new link. The old one opens nothing any more.');
  }

  async function keepPhoto(kind: ProcedurePhoto, file: File | undefined): Promise<void> {
    if (file === undefined) return;
    const isSent = await sendProcedurePhoto(episodeId, kind, file);
    setSaid(isSent ? `${PHOTO_WORDS[kind]}: the photo is kept. It is measured in the background.` : 'The photo was not kept. Try again.');
    if (isSent) setHandOut({ ...handOut, photos: [...photos, { kind, at: 'just now', state: 'not measured yet' }] });
  }

  return (
    <main className={styles.page}>
      <h1 ref={title} tabIndex={-1}>
        {isNew ? `Case ${caseCode} has been started` : `Case ${caseCode}: link, card and sheet`}
      </h1>
      {children}
      <div role="status">{said === '' ? null : <Notice title={said} />}</div>

      <section className={styles.part} aria-labelledby="link">
        <h2 id="link">The patient’s link</h2>
        {link === null ? <p>{linkUntil === null ? 'The link has ended. It opens nothing.' : `The link opens until ${linkUntil}. It is kept nowhere, so it cannot be shown again.`}</p> : <ToldLink link={link} onPrint={() => void print(link.secret, serial)} />}
        {asks === null ? (
          <div className={styles.tools}>
            <Button onClick={() => setAsks('renew')}>Make a new link</Button>
            {link !== null || linkUntil !== null ? <Button onClick={() => setAsks('end')}>End the link</Button> : null}
          </div>
        ) : (
          <Notice title={asks === 'end' ? 'End the link? The patient’s page closes on every phone at once.' : 'Make a new link? The old one, and every phone that it opened, stops at once. The patient needs the new sheet.'}>
            <div className={styles.tools}>
              <Button onClick={() => void changeLink(asks)}>{asks === 'end' ? 'Yes, end it' : 'Yes, make a new link'}</Button>
              <Button look="plain" onClick={() => setAsks(null)}>
                Not yet
              </Button>
            </div>
          </Notice>
        )}
      </section>

      <CardList cards={cards} post={post} onChange={(changed) => setHandOut({ ...handOut, cards: changed })} onPrint={(of) => void print(null, of)} onSay={setSaid} />

      <section className={styles.part} aria-labelledby="photos">
        <h2 id="photos">Photos of the day</h2>
        {photos.length === 0 ? <p>None yet. Both may be left out.</p> : null}
        <ul className={styles.list}>
          {photos.map(({ kind, at, state }) => (
            <li key={`${kind} ${at} ${state}`}>
              {PHOTO_WORDS[kind]}, {at}: {state}
            </li>
          ))}
        </ul>
        <div className={styles.two}>
          <PhotoField label="Add a photo before the procedure" hint="With a card in the picture." file={undefined} onPick={(file) => void keepPhoto('before', file)} />
          <PhotoField label="Add a photo straight after" hint="With a card in the picture." file={undefined} onPick={(file) => void keepPhoto('after', file)} />
        </div>
      </section>

      <p className={styles.tools}>
        <ButtonLink href={`/episodes/${encodeURIComponent(caseCode)}`}>Open the case</ButtonLink>
        <ButtonLink look="plain" href="/episodes/new">
          Start another
        </ButtonLink>
      </p>
    </main>
  );
}

function ToldLink({ link, onPrint }: { readonly link: HandedLink; readonly onPrint: () => void }) {
  return (
    <>
      <p>
        <a className={styles.address} href={link.address} target="_blank" rel="noreferrer">
          {link.address}
        </a>
      </p>
      <p className={styles.soft}>It is shown this once: the clinic keeps no copy. Print it now. Whoever has it opens the patient’s page.</p>
      <Button look="main" onClick={onPrint}>
        Card and aftercare sheet as PDF
      </Button>
    </>
  );
}
