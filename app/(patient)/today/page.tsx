import { TodayScreen } from './today-screen';

export default function TodayPage() {
  return <TodayScreen />;
}
