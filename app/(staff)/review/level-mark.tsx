import styles from './review.module.css';

/** A shape for each level, for the eye that runs down the list; the words stand beside it. */
const SHAPES: Readonly<Record<string, { readonly path: string; readonly look: string }>> = {
  now: { path: 'M10 1 19 10 10 19 1 10Z', look: styles.full },
  today: { path: 'M10 2 19 18 1 18Z', look: styles.full },
  soon: { path: 'M3 3H17V17H3Z', look: styles.open },
  visit: { path: 'M10 3a7 7 0 1 0 .01 0Z', look: styles.open },
  retake: { path: 'M10 3a7 7 0 1 0 .01 0Z', look: styles.broken },
};

export function LevelMark({ level }: { readonly level: string }) {
  const { path, look } = SHAPES[level] ?? SHAPES.visit;
  return (
    <svg className={styles.mark} viewBox="0 0 20 20" aria-hidden="true">
      <path className={look} d={path} />
    </svg>
  );
}
