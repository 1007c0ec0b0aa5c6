import type { ReviewList, ReviewRow } from '@/lib/server/review-row';
import { LevelMark } from './level-mark';
import { ReachLine, reachWords } from './reach-line';
import styles from './review.module.css';

interface ListProps {
  readonly list: ReviewList;
  readonly openId: string | null;
  readonly onOpen: (episodeId: string) => void;
}

/** One group for each level, in the order in which they are to be looked at. */
interface Group {
  readonly title: string;
  readonly rows: ReviewRow[];
}

function groupsOf(rows: readonly ReviewRow[]): Group[] {
  const groups: Group[] = [];
  for (const row of rows) {
    const title = row.asked === null || row.level === 'now' ? row.levelWords : 'The clinician has been asked';
    const last = groups.at(-1);
    if (last?.title === title) last.rows.push(row);
    else groups.push({ title, rows: [row] });
  }
  return groups;
}

/** The list, worst first. */
export function ReviewRows({ list, openId, onOpen }: ListProps) {
  return (
    <>
      {groupsOf(list.rows).map(({ title, rows }) => (
        <section key={title} className={styles.group} aria-label={`${title}, ${rows.length}`}>
          <h2 className={styles.groupTitle}>
            {title} <span className={styles.count}>{rows.length}</span>
          </h2>
          <ol className={styles.rows}>
            {rows.map((row) => (
              <li key={row.episodeId}>
                <Row row={row} isOpen={row.episodeId === openId} onOpen={onOpen} />
              </li>
            ))}
          </ol>
        </section>
      ))}
      {list.more > 0 ? <p className={styles.soft}>{list.more} more cases wait behind these.</p> : null}
    </>
  );
}

function Row({ row, isOpen, onOpen }: { readonly row: ReviewRow; readonly isOpen: boolean; readonly onOpen: ListProps['onOpen'] }) {
  const { episodeId, caseCode, level, levelWords, day, why, also, wait, reach, openWith, asked } = row;
  return (
    <button type="button" className={styles.row} data-row={episodeId} aria-current={isOpen || undefined} onClick={() => onOpen(episodeId)}>
      <span className={styles.rowHead}>
        <LevelMark level={level} />
        <span className={styles.code}>{caseCode}</span>
        <span className={styles.level}>{levelWords}</span>
        <span className={styles.day}>day {day}</span>
      </span>
      <span className={styles.why}>
        {why}
        {also.length > 0 ? <span className={styles.soft}> Also: {also.join('; ')}.</span> : null}
      </span>
      <span className={styles.rowReach}>
        <ReachLine reach={reach} />
        <span className={styles.small}>{reachWords(reach)}</span>
      </span>
      <span className={styles.rowFoot}>
        <WaitBar share={wait.shareOfLimit} />
        <span className={wait.isOver ? styles.over : undefined}>{wait.words}</span>
      </span>
      {openWith === null || openWith.mine ? null : <span className={styles.tag}>{openWith.name} has it open</span>}
      {asked === null ? null : (
        <span className={styles.tag}>
          {asked.by}: {asked.note}
        </span>
      )}
    </button>
  );
}

/** The wait as a stroke along a rule; the upright is the clinic's limit. */
function WaitBar({ share }: { readonly share: number | null }) {
  if (share === null) return null;
  const [limit, most] = [60, 100];
  return (
    <svg className={styles.waitBar} viewBox="0 0 104 12" aria-hidden="true">
      <path className={styles.axis} d="M2 9H102" />
      <path className={styles.waited} d={`M2 6H${2 + Math.max(1, Math.min(most, share * limit))}`} />
      <path className={styles.pen} d={`M${2 + limit} 1V11`} />
    </svg>
  );
}
