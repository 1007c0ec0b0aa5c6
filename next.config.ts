import type { NextConfig } from 'next';

const config: NextConfig = {
  // Native programs and their like are loaded as they are; only the worker ever opens a picture.
  serverExternalPackages: ['@prisma/client', '@prisma/adapter-better-sqlite3', 'better-auth', 'better-sqlite3', 'heic-decode', 'onnxruntime-node', 'opencv-wasm', 'sharp'],
  poweredByHeader: false,
  reactStrictMode: true,
  // `npm run types` checks the whole tree; once is enough.
  typescript: { ignoreBuildErrors: true },
  // Pictures of patients never pass through the image optimiser: its cache asks nobody who is looking.
  images: { unoptimized: true },
  // The secret of a personal link stands in its address.
  logging: { incomingRequests: { ignore: [/^\/p\//] } },
};

export default config;
