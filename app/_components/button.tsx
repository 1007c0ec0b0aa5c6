import type { AnchorHTMLAttributes, ButtonHTMLAttributes } from 'react';
import styles from './button.module.css';

/** `main`: the one thing to do here. `plain`: a way out. Otherwise one of several. */
export type ButtonLook = 'main' | 'plain' | 'wide';

const classesOf = (look?: ButtonLook) => (look === undefined ? styles.button : `${styles.button} ${styles[look]}`);

type ButtonProps = Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className'> & { readonly look?: ButtonLook };

/** Something to press. It is never sent as part of a form unless its type says so. */
export function Button({ look, ...rest }: ButtonProps) {
  return <button type="button" {...rest} className={classesOf(look)} />;
}

type ButtonLinkProps = Omit<AnchorHTMLAttributes<HTMLAnchorElement>, 'className'> & { readonly look?: ButtonLook; readonly href: string };

/** A link that looks like a button: it goes somewhere, or calls someone. */
export function ButtonLink({ look, ...rest }: ButtonLinkProps) {
  return <a {...rest} className={classesOf(look)} />;
}
