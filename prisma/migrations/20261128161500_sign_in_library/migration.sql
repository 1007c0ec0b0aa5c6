-- Whoever is signed in signs in once more: cookies are signed now.
DROP TABLE "StaffSession";

-- CreateTable
CREATE TABLE "StaffSession" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT NOT NULL,
    "staffId" TEXT NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "endsAt" DATETIME NOT NULL,
    CONSTRAINT "StaffSession_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StaffSignInStep" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "identifierHash" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "endsAt" DATETIME NOT NULL
);

-- Passwords stay as they are.
CREATE TABLE "new_StaffCredential" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "staffId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL DEFAULT 'credential',
    "passwordHash" TEXT NOT NULL,
    "changedAt" DATETIME NOT NULL,
    CONSTRAINT "StaffCredential_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_StaffCredential" ("id", "staffId", "passwordHash", "changedAt") SELECT "staffId", "staffId", "passwordHash", "changedAt" FROM "StaffCredential";
DROP TABLE "StaffCredential";
ALTER TABLE "new_StaffCredential" RENAME TO "StaffCredential";

-- Secrets and recovery codes stay too; `npm run migrate` seals the secrets anew, as the library does.
ALTER TABLE "Staff" ADD COLUMN "hasFactor" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "Staff" ADD COLUMN "changedAt" DATETIME;
UPDATE "Staff" SET "hasFactor" = true WHERE "id" IN (SELECT "staffId" FROM "StaffSecondFactor" WHERE "confirmedAt" IS NOT NULL);
CREATE TABLE "new_StaffSecondFactor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "staffId" TEXT NOT NULL,
    "secret" TEXT NOT NULL,
    "recoveryHashes" TEXT NOT NULL,
    "verified" BOOLEAN NOT NULL,
    "failures" INTEGER NOT NULL DEFAULT 0,
    "lockedUntil" DATETIME,
    CONSTRAINT "StaffSecondFactor_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_StaffSecondFactor" ("id", "staffId", "secret", "recoveryHashes", "verified") SELECT "staffId", "staffId", "secret", "recoveryHashes", "confirmedAt" IS NOT NULL FROM "StaffSecondFactor";
DROP TABLE "StaffSecondFactor";
ALTER TABLE "new_StaffSecondFactor" RENAME TO "StaffSecondFactor";

-- CreateIndex
CREATE UNIQUE INDEX "StaffSession_tokenHash_key" ON "StaffSession"("tokenHash");

-- CreateIndex
CREATE INDEX "StaffSession_staffId_idx" ON "StaffSession"("staffId");

-- CreateIndex
CREATE UNIQUE INDEX "StaffCredential_staffId_key" ON "StaffCredential"("staffId");

-- CreateIndex
CREATE UNIQUE INDEX "StaffSecondFactor_staffId_key" ON "StaffSecondFactor"("staffId");

-- CreateIndex
CREATE INDEX "StaffSignInStep_identifierHash_idx" ON "StaffSignInStep"("identifierHash");

-- CreateIndex
CREATE INDEX "StaffSignInStep_endsAt_idx" ON "StaffSignInStep"("endsAt");
