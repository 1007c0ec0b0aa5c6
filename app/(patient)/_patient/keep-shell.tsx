'use client';

import { useEffect } from 'react';

/** Asks the service worker to keep the one page that opens without network, as this build has it. */
export function KeepShell() {
  useEffect(() => {
    if (!('serviceWorker' in navigator)) return;
    const keep = async () => {
      await navigator.serviceWorker.register('/sw.js');
      const { active } = await navigator.serviceWorker.ready;
      active?.postMessage('keepShell');
    };
    // Without it the page needs network to open; nothing else changes.
    keep().catch(() => undefined);
  }, []);
  return null;
}
