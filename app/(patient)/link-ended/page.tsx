import { LinkEndedScreen } from './link-ended-screen';

export default function LinkEndedPage() {
  return <LinkEndedScreen />;
}
