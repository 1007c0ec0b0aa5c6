'use client';

import { useState } from 'react';
import type { HandedCard } from '@/lib/server/load-hand-out';
import { Button } from '../../_components/button';
import { Field } from '../../_components/field';
import styles from './hand-out.module.css';

interface CardListProps {
  readonly cards: readonly HandedCard[];
  readonly post: (what: string, body: unknown) => Promise<Response | null>;
  readonly onChange: (cards: readonly HandedCard[]) => void;
  readonly onPrint: (serial: string) => void;
  readonly onSay: (words: string) => void;
}

/** In groups, as printed on the card. */
const shown = (serial: string): string => serial.replace(/^(.{5})(.{5})(.)$/, '$1-$2-$3');

/** The cards of one person: what a ruler reads on each, and which are in use. */
export function CardList({ cards, post, onChange, onPrint, onSay }: CardListProps) {
  const inUse = cards.filter(({ retiredAt }) => retiredAt === null);

  async function change(body: { step: string; serial?: string; barReadsMm?: number }, words: string): Promise<string | null> {
    const response = await post('cards', body);
    const said = (await response?.json().catch(() => null)) as { sentence?: string; serial?: string } | null;
    onSay(response?.ok ? words : (said?.sentence ?? 'The server did not take this.'));
    return response?.ok ? (said?.serial ?? '') : null;
  }
  const add = async () => {
    const serial = await change({ step: 'add' }, 'There is another card. Print it.');
    if (serial !== null) onChange([{ serial, madeAt: 'just now', barReadsMm: null, retiredAt: null }, ...cards]);
  };
  const update = (serial: string, more: Partial<HandedCard>) => onChange(cards.map((card) => (card.serial === serial ? { ...card, ...more } : card)));
  const retire = async (serial: string) => {
    if ((await change({ step: 'retire', serial }, `Card ${shown(serial)} is out of use. Photos with it are held for a person.`)) !== null) update(serial, { retiredAt: 'just now' });
  };
  const measure = async (serial: string, barReadsMm: number) => {
    if ((await change({ step: 'measure', serial, barReadsMm }, `Card ${shown(serial)}: the bar reads ${barReadsMm} mm. It is kept.`)) !== null) update(serial, { barReadsMm });
  };

  return (
    <section className={styles.part} aria-labelledby="cards">
      <h2 id="cards">Cards</h2>
      <ul className={styles.list}>
        {inUse.map((card) => (
          <li key={card.serial} className={styles.card}>
            <p>
              <span className={styles.serial}>{shown(card.serial)}</span>, made {card.madeAt}.{' '}
              {card.barReadsMm === null ? 'Not checked with a ruler yet: until then millimetres count as less certain.' : `The bar reads ${card.barReadsMm} mm.`}
            </p>
            <BarField serial={card.serial} onMeasure={(reads) => void measure(card.serial, reads)} />
            <div className={styles.tools}>
              <Button onClick={() => onPrint(card.serial)} aria-label={`Print card ${shown(card.serial)} alone`}>
                Print this card alone
              </Button>
              {inUse.length > 1 ? (
                <Button onClick={() => void retire(card.serial)} aria-label={`Take card ${shown(card.serial)} out of use`}>
                  Take out of use
                </Button>
              ) : null}
            </div>
          </li>
        ))}
      </ul>
      {cards.length > inUse.length ? <p className={styles.soft}>Out of use: {cards.filter(({ retiredAt }) => retiredAt !== null).map(({ serial }) => shown(serial)).join(', ')}.</p> : null}
      <div>
        <Button onClick={() => void add()}>Add a card</Button>
      </div>
    </section>
  );
}

function BarField({ serial, onMeasure }: { readonly serial: string; readonly onMeasure: (reads: number) => void }) {
  const [reads, setReads] = useState('');
  const value = Number(reads.replace(',', '.'));
  return (
    <form
      className={styles.bar}
      onSubmit={(event) => {
        event.preventDefault();
        if (reads.trim() !== '' && Number.isFinite(value)) onMeasure(value);
      }}
    >
      <Field label={`What does a ruler read along the 50 mm bar of ${shown(serial)}?`} hint="In millimetres, such as 49.5." numeric maxLength={6} value={reads} onChange={setReads} />
      <Button type="submit">Keep</Button>
    </form>
  );
}
