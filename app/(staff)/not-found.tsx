import { ButtonLink } from '../_components/button';
import styles from './sign-in/sign-in.module.css';

/** What is not there, and what belongs to somebody else, are answered alike. */
export default function NotFoundPage() {
  return (
    <main className={styles.page}>
      <h1>There is no such page for you</h1>
      <p>It does not exist, or it belongs to another role or another clinic.</p>
      <ButtonLink href="/sign-in">Go to your first page</ButtonLink>
    </main>
  );
}
