import { CheckInScreen } from './check-in-screen';

export default function CheckInPage() {
  return <CheckInScreen />;
}
