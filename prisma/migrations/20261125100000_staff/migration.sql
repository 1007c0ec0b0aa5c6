-- CreateTable
CREATE TABLE "StaffCredential" (
    "staffId" TEXT NOT NULL PRIMARY KEY,
    "passwordHash" TEXT NOT NULL,
    "changedAt" DATETIME NOT NULL,
    CONSTRAINT "StaffCredential_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StaffSession" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "staffId" TEXT NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "endsAt" DATETIME NOT NULL,
    CONSTRAINT "StaffSession_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SignInDelay" (
    "emailHash" TEXT NOT NULL PRIMARY KEY,
    "failures" INTEGER NOT NULL,
    "waitUntil" DATETIME NOT NULL,
    "triedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "ReviewClaim" (
    "episodeId" TEXT NOT NULL PRIMARY KEY,
    "staffId" TEXT NOT NULL,
    "claimedAt" DATETIME NOT NULL,
    "endsAt" DATETIME NOT NULL,
    CONSTRAINT "ReviewClaim_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ReviewClaim_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "StaffSession_staffId_idx" ON "StaffSession"("staffId");

-- CreateIndex
CREATE INDEX "SignInDelay_triedAt_idx" ON "SignInDelay"("triedAt");

-- CreateIndex
CREATE INDEX "Episode_clinicId_closedAt_idx" ON "Episode"("clinicId", "closedAt");
