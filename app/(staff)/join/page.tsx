import type { Metadata } from 'next';
import { JoinScreen } from './join-screen';

export const metadata: Metadata = { title: 'Make a password' };

/** Whose invitation it is, is told by the part of the address that never leaves the browser before the button is pressed. */
export default function JoinPage() {
  return <JoinScreen />;
}
