import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import './tokens.css';

export const metadata: Metadata = {
  title: 'Toe check-in',
  manifest: '/manifest.webmanifest',
  icons: { icon: '/icon.svg', apple: '/icon-180.png' },
  referrer: 'no-referrer',
  robots: { index: false, follow: false },
  // Days and millimetres are not phone numbers; the real ones are links.
  formatDetection: { telephone: false },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#fbfaf5' },
    { media: '(prefers-color-scheme: dark)', color: '#10172a' },
  ],
};

// Every page is made for its request: the nonce of its scripts is, and nothing personal may be kept in between.
export const dynamic = 'force-dynamic';

export default function RootLayout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  );
}
