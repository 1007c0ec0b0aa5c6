'use client';

import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { patientStateSchema, type PatientState } from '../../../lib/care/patient-contract';
import type { Language, Messages } from '../../_messages/message-keys';
import { messagesIn } from '../../_messages/messages';
import { hasSomethingToSend, isUnsent, type KeptCheckIn } from '../_queue/kept-check-in';
import { phoneStore } from '../_queue/phone-store';
import { retryDelayMs } from '../_queue/retry-delay';
import { sendAll } from '../_queue/send-all';

/** `opening` until the phone or the server has answered; `noAccess`: no link was opened on this phone; `birthYearOwed`: the clinic asks one more thing; `nothing`: no network and nothing kept. */
type Access = 'opening' | 'open' | 'noAccess' | 'birthYearOwed' | 'nothing';

interface PatientValue {
  readonly access: Access;
  /** As the server last said it; kept on the phone for times without network. */
  readonly state: PatientState | null;
  /** Server's clock minus this phone's, milliseconds. */
  readonly skewMs: number;
  readonly language: Language;
  readonly messages: Messages;
  readonly setLanguage: (language: Language) => void;
  readonly online: boolean;
  /** This person's check-ins on this phone. */
  readonly checkIns: readonly KeptCheckIn[];
  /** Shows a check-in as it will be, while the work writes it down. */
  readonly write: (shown: KeptCheckIn, work: () => Promise<void>) => Promise<void>;
  readonly sending: boolean;
  readonly sendNow: () => void;
  readonly reload: () => void;
}

const PatientContext = createContext<PatientValue | null>(null);

/** What every screen of the patient knows. */
export function usePatient(): PatientValue {
  const value = useContext(PatientContext);
  if (value === null) throw new Error('usePatient: a screen of the patient stands inside PatientProvider');
  return value;
}

interface Known {
  readonly state: PatientState;
  readonly skewMs: number;
}

/** The state as the server says it now, else as the phone has it. */
async function readState(): Promise<{ access: Access; known: Known | null; online: boolean }> {
  try {
    const response = await fetch('/api/patient/state', { cache: 'no-store' });
    if (response.status === 403) return { access: 'birthYearOwed', known: null, online: true };
    if ([401, 404].includes(response.status)) return { access: 'noAccess', known: null, online: true };
    if (response.ok) {
      const state = patientStateSchema.parse(await response.json());
      const known = { state, skewMs: Date.parse(state.now) - Date.now() };
      // Without room to keep it, the page still works with network.
      await phoneStore.write('state', known).catch(() => undefined);
      return { access: 'open', known, online: true };
    }
  } catch {
    // No network, or an answer that is none of ours: the phone's copy stands.
  }
  const known = (await phoneStore.read('state').catch(() => undefined)) as Known | undefined;
  return { access: known ? 'open' : 'nothing', known: known ?? null, online: false };
}

function useServerState() {
  const [answer, setAnswer] = useState<{ access: Access; known: Known | null; online: boolean }>({ access: 'opening', known: null, online: true });
  const newest = useRef(0);
  // An answer that was asked for earlier says nothing of the network as it is now, however late it comes.
  const reload = useCallback(() => {
    newest.current += 1;
    const mine = newest.current;
    void readState().then((read) => mine === newest.current && setAnswer(read));
  }, []);
  return { ...answer, reload };
}

/**
 * The check-ins as they lie on the phone. What the person does is shown at once and written at the same time; while
 * such a write is under way, what is read from the phone is older than the screen and is left aside.
 */
function useCheckIns(owner: string | undefined) {
  const [all, setAll] = useState<readonly KeptCheckIn[]>([]);
  const writing = useRef(0);
  useEffect(() => {
    const read = () =>
      void phoneStore.checkIns().then((kept) => writing.current === 0 && setAll(kept), () => undefined);
    read();
    return phoneStore.onChange(read);
  }, []);

  const write = useCallback(async (shown: KeptCheckIn, work: () => Promise<void>) => {
    setAll((before) => [...before.filter(({ clientId }) => clientId !== shown.clientId), shown]);
    writing.current += 1;
    try {
      await work();
    } finally {
      writing.current -= 1;
      if (writing.current === 0) phoneStore.say();
    }
  }, []);

  return { checkIns: useMemo(() => all.filter((one) => one.owner === owner), [all, owner]), write };
}

/** Sends on load, when something new waits, on `online`, when the page is looked at again, and after a while. */
function useSender(owner: string | undefined, waiting: number, onTried: () => void) {
  const [sending, setSending] = useState(false);
  const attempts = useRef(0);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const tried = useRef(onTried);
  tried.current = onTried;

  const send = useCallback(() => {
    if (owner === undefined) return;
    clearTimeout(timer.current);
    setSending(true);
    void sendAll(owner)
      .catch(() => 'later' as const)
      .then((outcome) => {
        setSending(false);
        attempts.current = outcome === 'later' ? attempts.current + 1 : 0;
        if (outcome === 'later') timer.current = setTimeout(send, retryDelayMs(attempts.current));
        // After a failure too: the network may have gone without the phone saying so, and then the page has to.
        tried.current();
      });
  }, [owner]);

  useEffect(() => {
    if (waiting > 0) send();
  }, [waiting, send]);

  useEffect(() => {
    const now = () => {
      attempts.current = 0;
      send();
    };
    const whenSeen = () => document.visibilityState === 'visible' && now();
    window.addEventListener('online', now);
    document.addEventListener('visibilitychange', whenSeen);
    return () => {
      clearTimeout(timer.current);
      window.removeEventListener('online', now);
      document.removeEventListener('visibilitychange', whenSeen);
    };
  }, [send]);

  return { sending, send };
}

function useLanguage(first: Language, fromClinic: Language | undefined) {
  const [own, setOwn] = useState<Language | null>(null);
  useEffect(() => {
    void phoneStore.read('language').then((kept) => (kept === 'en' || kept === 'es') && setOwn(kept), () => undefined);
  }, []);
  const language = own ?? fromClinic ?? first;
  const messages = messagesIn(language);
  useEffect(() => {
    document.documentElement.lang = language;
    document.title = messages.title;
  }, [language, messages]);
  const setLanguage = useCallback((chosen: Language) => {
    setOwn(chosen);
    void phoneStore.write('language', chosen).catch(() => undefined);
  }, []);
  return { language, messages, setLanguage };
}

export function PatientProvider({ firstLanguage, children }: { readonly firstLanguage: Language; readonly children: ReactNode }) {
  const { access, known, online, reload } = useServerState();
  const owner = known?.state.procedureAt;
  const { checkIns, write } = useCheckIns(owner);
  const words = useLanguage(firstLanguage, known?.state.language);
  const { sending, send } = useSender(owner, checkIns.filter(hasSomethingToSend).length + checkIns.filter(isUnsent).length, reload);

  useEffect(() => {
    reload();
    window.addEventListener('online', reload);
    window.addEventListener('offline', reload);
    // Asked once; where it is refused, the page says "not sent yet" all the same.
    void navigator.storage?.persist?.().catch(() => false);
    return () => {
      window.removeEventListener('online', reload);
      window.removeEventListener('offline', reload);
    };
  }, [reload]);

  const value = { access, state: known?.state ?? null, skewMs: known?.skewMs ?? 0, ...words, online, checkIns, write, sending, sendNow: send, reload };
  return <PatientContext value={value}>{children}</PatientContext>;
}
