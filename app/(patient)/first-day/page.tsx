import { FirstDayScreen } from './first-day-screen';

export default function FirstDayPage() {
  return <FirstDayScreen />;
}
