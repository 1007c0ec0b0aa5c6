import type { ReactNode } from 'react';
import styles from './data-table.module.css';

interface DataTableProps {
  /** Read out first; on the page it may stand above the table anyway. */
  readonly caption: string;
  readonly captionUnseen?: boolean;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly ReactNode[] }[];
}

/** A table that moves sideways by itself on a narrow screen, also by keyboard. The first cell names its row. */
export function DataTable({ caption, captionUnseen = false, columns, rows }: DataTableProps) {
  return (
    <div className={styles.scroll} tabIndex={0} role="region" aria-label={caption}>
      <table className={styles.table}>
        <caption className={captionUnseen ? styles.unseen : styles.caption}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells: [first, ...others] }) => (
            <tr key={key}>
              <th scope="row">{first}</th>
              {others.map((cell, at) => (
                <td key={columns[at + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
