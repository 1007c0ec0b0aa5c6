'use client';

import { useSyncExternalStore } from 'react';
import { CheckInScreen } from '../check-in/check-in-screen';
import { FirstDayScreen } from '../first-day/first-day-screen';
import { TodayScreen } from '../today/today-screen';

const SCREENS: Readonly<Record<string, () => React.ReactNode>> = {
  '/check-in': CheckInScreen,
  '/first-day': FirstDayScreen,
};

const never = () => () => undefined;

/** The one page kept for times without network. It stands in for the page whose address was asked for. */
export function OfflineScreen() {
  const path = useSyncExternalStore(never, () => window.location.pathname, () => '/offline');
  const Screen = SCREENS[path] ?? TodayScreen;
  return <Screen />;
}
