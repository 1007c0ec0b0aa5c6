import styles from './episode-screen.module.css';

/** What it is and is not. Last on the screen, first on paper. */
export function Cautions() {
  return (
    <section aria-labelledby="cautions" className={styles.cautions}>
      <h2 id="cautions">Before you rely on this page</h2>
      <ul>
        <li>It is a measurement aid under the clinic’s own judgement: not a diagnosis and not a medical device.</li>
        <li>Local protocols and licensed practice come first.</li>
        <li>It cannot see depth, heat, pus under the skin or bone. Redness on darker skin may not show in a photo at all.</li>
        <li>Every number is measured from a photo, with its uncertainty at k = 2; what is missing was not measured and is not zero.</li>
      </ul>
    </section>
  );
}
