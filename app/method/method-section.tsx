import type { ShownMethod } from '../../lib/server/load-method';
import { DataTable } from '../_components/data-table';
import styles from './method.module.css';
import { SensitivityFigure } from './sensitivity-figure';

type Table = ShownMethod['fairness'];

const Words = ({ table }: { readonly table: Table }) => (
  <DataTable caption={table.caption} columns={table.columns} rows={table.rows.map((cells, at) => ({ key: `${at} ${cells[0]}`, cells }))} />
);

/** How the numbers are made and how well they hold. The same on its own page and in a report. */
export function MethodSection({ method }: { readonly method: ShownMethod }) {
  return (
    <div className={styles.section}>
      <Surface />
      <section className={styles.part}>
        <h2>What is measured</h2>
        <dl className={styles.terms}>
          {method.measurands.map(({ name, unit, meaning }) => (
            <div key={name}>
              <dt>
                {name} <span className={styles.unit}>{unit}</span>
              </dt>
              <dd>{meaning}</dd>
            </div>
          ))}
        </dl>
      </section>
      <Budget example={method.example} />
      <Limits />
      <section className={styles.part}>
        <h2>How near it comes</h2>
        <ul className={styles.list}>
          {method.madeBy.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <p>Phantoms are photos that this project’s own renderer makes of toes and cards whose every millimetre is known. They are not patients.</p>
        {method.accuracy.map((table) => (
          <Words key={table.caption} table={table} />
        ))}
      </section>
      <Fairness method={method} />
      <section className={styles.part}>
        <h2>Pictures made by others</h2>
        <p>Nothing here was trained or tuned on these. “Refused” is the right answer where there is no card.</p>
        <Words table={method.outside} />
        <ul className={styles.list}>
          {method.outsideNotes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      </section>
      <Sensitivity method={method} />
    </div>
  );
}

const Surface = () => (
  <section className={styles.part}>
    <h2>The card, and the plane that everything lies in</h2>
    <p>
      <strong>All lengths and areas are projected onto the plane of the calibration card</strong>, in millimetres, in the card’s own frame. A toe is curved and rarely lies
      exactly in that plane; the error this makes is in the uncertainty of every number.
    </p>
    <p>
      The card is as large as a bank card (85.60 × 53.98 mm, ISO/IEC 7810) and lies around the toe, level with the nail. Eight square marks surround the nail, so that scale and
      tilt are read between them and never beyond them. Scale comes from how far apart the marks are, not from how large they print. A bar of 50 mm shows whether the printer kept
      the size: until somebody has measured it, the scale is doubted by 3 %, afterwards by 0.5 %. Grey and coloured patches give white balance, exposure and shading.
    </p>
  </section>
);

function Budget({ example }: { readonly example: ShownMethod['example'] }) {
  return (
    <section className={styles.part}>
      <h2>Where the uncertainty comes from</h2>
      <p>
        Every number has a standard uncertainty u, put together from its sources as the Guide to the Expression of Uncertainty in Measurement says (JCGM 100), and an expanded one,
        U = 2 · u. A change between two photos is called a change only beyond 1.96 · √2 · u.
      </p>
      {example === null ? (
        <p>The example could not be worked out on this machine just now.</p>
      ) : (
        <>
          <p>
            Worked out just now, on the sample photo <code>{example.photo}</code>
            {example.tiltDeg === null ? '' : ` (phone tilted by ${example.tiltDeg.toFixed(0)}°`}
            {example.distanceMm === null ? ')' : `, ${example.distanceMm.toFixed(0)} mm away)`}: redness area <strong>{example.value}</strong>. The phantom’s true area is{' '}
            {example.trueAreaMm2.toFixed(1)} mm².
          </p>
          <Words table={example.table} />
          <p className={styles.sum}>{example.sentence}</p>
        </>
      )}
    </section>
  );
}

const Limits = () => (
  <section className={styles.part}>
    <h2>Known limits</h2>
    <ul className={styles.list}>
      <li>
        Curvature: what lies on the side of a toe is seen shortened, up to nearly half of it. The unrolled numbers take a cylinder instead of the plane, and a fold that the camera
        did not see is refused, not guessed.
      </li>
      <li>Depth: one photo shows no depth. How deep a groove or a wound is, is not measured.</li>
      <li>
        Height: a card that lies lower or higher than the nail makes everything too large or too small, by twice as many percent in area as in length. At 200 mm, 5 mm make 2.6 % in
        length and 5.2 % in area.
      </li>
      <li>
        Tone: on brown and dark skin redness may show little or nothing in a photo. Where its contrast is too low the answer is “cannot be judged from this photo”, and a person
        looks. It is never “no redness”.
      </li>
      <li>Colour: a home card gives no absolute colour. Redness is compared with the same person’s skin in the same photo.</li>
      <li>What no photo shows: heat, pus under the skin, bone, pain.</li>
    </ul>
  </section>
);

function Fairness({ method }: { readonly method: ShownMethod }) {
  return (
    <section className={styles.part}>
      <h2>By tone of skin, at equal contrast</h2>
      <p>
        The same toes and the same light, with as much blood added as each skin needs for the same rise of the erythema index. What is neither found nor given to a person would be
        missed; no class of skin may be more than five points behind the best. The program’s own tests hold a smaller set to that.
      </p>
      <Words table={method.fairness} />
      {method.unfair.map((sentence) => (
        <p key={sentence}>
          <strong>Beyond the limit: {sentence}.</strong>
        </p>
      ))}
    </section>
  );
}

function Sensitivity({ method }: { readonly method: ShownMethod }) {
  return (
    <section className={styles.part}>
      <h2>What moves the error</h2>
      <p>
        One thing about the photo is turned at a time, on three toes. Each dot is a photo’s error without its sign, open where a gate refused the photo; the line is the stated
        uncertainty (k = 2), which a dot should lie below. The dashed line is where a gate begins to refuse.
      </p>
      {method.breaks.length === 0 ? (
        <p>At no level did more than one photo in three lie outside its stated uncertainty.</p>
      ) : (
        <>
          <p>Levels at which more than one photo in three lay outside its stated uncertainty:</p>
          <ul className={styles.list}>
            {method.breaks.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {method.gateReasons.length === 0 ? null : (
        <>
          <p>Where gates have to stand, because a number that may be off by more than half of itself says little:</p>
          <ul className={styles.list}>
            {method.gateReasons.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {method.sensitivity.map(({ name, plots, table }) => (
        <div key={name} className={styles.part}>
          <h3>{name}</h3>
          <div className={styles.plots}>
            {plots.map(({ measurand, plot }) => (
              <SensitivityFigure key={measurand} id={`${name} ${measurand}`.replace(/[^a-z]+/gi, '-')} measurand={measurand} plot={plot} />
            ))}
          </div>
          <details className={styles.details}>
            <summary>{`${name} as a table`}</summary>
            <Words table={table} />
          </details>
        </div>
      ))}
    </section>
  );
}
