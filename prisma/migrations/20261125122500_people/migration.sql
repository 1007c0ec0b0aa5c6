-- CreateTable
CREATE TABLE "StaffSecondFactor" (
    "staffId" TEXT NOT NULL PRIMARY KEY,
    "secret" TEXT NOT NULL,
    "lastStep" INTEGER NOT NULL,
    "recoveryHashes" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "confirmedAt" DATETIME,
    CONSTRAINT "StaffSecondFactor_staffId_fkey" FOREIGN KEY ("staffId") REFERENCES "Staff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StaffInvitation" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "clinicId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "endsAt" DATETIME NOT NULL,
    "usedAt" DATETIME,
    CONSTRAINT "StaffInvitation_clinicId_fkey" FOREIGN KEY ("clinicId") REFERENCES "Clinic" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "StaffInvitation_clinicId_idx" ON "StaffInvitation"("clinicId");

-- CreateIndex
CREATE INDEX "AuditEvent_clinicId_at_idx" ON "AuditEvent"("clinicId", "at");
