-- CreateTable
CREATE TABLE "Clinic" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "emergencyPhone" TEXT NOT NULL,
    "openingHours" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "language" TEXT NOT NULL,
    "asksBirthYear" BOOLEAN NOT NULL,
    "reviewLimits" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "RuleBookVersion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "clinicId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "limits" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    CONSTRAINT "RuleBookVersion_clinicId_fkey" FOREIGN KEY ("clinicId") REFERENCES "Clinic" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Staff" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "clinicId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "active" BOOLEAN NOT NULL,
    "madeAt" DATETIME NOT NULL,
    CONSTRAINT "Staff_clinicId_fkey" FOREIGN KEY ("clinicId") REFERENCES "Clinic" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Episode" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "clinicId" TEXT NOT NULL,
    "caseCode" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "language" TEXT NOT NULL,
    "birthYear" INTEGER,
    "risks" TEXT NOT NULL,
    "antibioticStartedAt" DATETIME,
    "linkTokenHash" TEXT NOT NULL,
    "linkEndsAt" DATETIME NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "closedAt" DATETIME,
    "assessAt" DATETIME NOT NULL,
    CONSTRAINT "Episode_clinicId_fkey" FOREIGN KEY ("clinicId") REFERENCES "Clinic" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Procedure" (
    "episodeId" TEXT NOT NULL PRIMARY KEY,
    "at" DATETIME NOT NULL,
    "matricectomy" TEXT NOT NULL,
    "treatedSides" TEXT NOT NULL,
    "stripMm" REAL,
    "edge" TEXT,
    "pusSeen" BOOLEAN,
    "boneFelt" BOOLEAN,
    "anaestheticAt" DATETIME,
    "recordedAt" DATETIME NOT NULL,
    CONSTRAINT "Procedure_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Plan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "json" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    CONSTRAINT "Plan_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Card" (
    "serial" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "barReadsMm" REAL,
    "madeAt" DATETIME NOT NULL,
    "retiredAt" DATETIME,
    CONSTRAINT "Card_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PatientSession" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "endsAt" DATETIME NOT NULL,
    "birthYearOkAt" DATETIME,
    "birthYearTries" INTEGER NOT NULL,
    CONSTRAINT "PatientSession_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CheckIn" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "clientId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    "answers" TEXT NOT NULL,
    "worry" TEXT,
    "hasPhoto" BOOLEAN NOT NULL,
    "bodySha256" TEXT NOT NULL,
    "callNow" BOOLEAN NOT NULL,
    CONSTRAINT "CheckIn_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "clientId" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "lengthBytes" INTEGER NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    CONSTRAINT "Photo_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Analysis" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "photoId" TEXT NOT NULL,
    "methodVersion" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "gates" TEXT NOT NULL,
    "json" TEXT,
    "viewSha256" TEXT,
    "finishedAt" DATETIME NOT NULL,
    CONSTRAINT "Analysis_photoId_fkey" FOREIGN KEY ("photoId") REFERENCES "Photo" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OutlineVersion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "photoId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "methodVersion" TEXT NOT NULL,
    "outlines" TEXT NOT NULL,
    "measurements" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    CONSTRAINT "OutlineVersion_photoId_fkey" FOREIGN KEY ("photoId") REFERENCES "Photo" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Assessment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "ruleBookVersion" TEXT NOT NULL,
    "findings" TEXT NOT NULL,
    "trend" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    CONSTRAINT "Assessment_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Finding" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "rule" TEXT NOT NULL,
    "level" TEXT NOT NULL,
    "ruleBookVersion" TEXT NOT NULL,
    "json" TEXT NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "foundAt" DATETIME NOT NULL,
    CONSTRAINT "Finding_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Resolution" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "findingId" TEXT,
    "rule" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "outcome" TEXT,
    "by" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "Resolution_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Resolution_findingId_fkey" FOREIGN KEY ("findingId") REFERENCES "Finding" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Message" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "Message_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AuditEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "clinicId" TEXT,
    "episodeId" TEXT,
    "actor" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "rule" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "AuditEvent_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Job" (
    "photoId" TEXT NOT NULL PRIMARY KEY,
    "state" TEXT NOT NULL,
    "attempts" INTEGER NOT NULL,
    "claimedBy" TEXT,
    "leaseEndsAt" DATETIME,
    "madeAt" DATETIME NOT NULL,
    "finishedAt" DATETIME,
    "trouble" TEXT,
    CONSTRAINT "Job_photoId_fkey" FOREIGN KEY ("photoId") REFERENCES "Photo" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "RuleBookVersion_clinicId_number_key" ON "RuleBookVersion"("clinicId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Staff_email_key" ON "Staff"("email");

-- CreateIndex
CREATE UNIQUE INDEX "Episode_linkTokenHash_key" ON "Episode"("linkTokenHash");

-- CreateIndex
CREATE INDEX "Episode_assessAt_idx" ON "Episode"("assessAt");

-- CreateIndex
CREATE UNIQUE INDEX "Episode_clinicId_caseCode_key" ON "Episode"("clinicId", "caseCode");

-- CreateIndex
CREATE UNIQUE INDEX "Plan_episodeId_number_key" ON "Plan"("episodeId", "number");

-- CreateIndex
CREATE INDEX "Card_episodeId_idx" ON "Card"("episodeId");

-- CreateIndex
CREATE INDEX "PatientSession_episodeId_idx" ON "PatientSession"("episodeId");

-- CreateIndex
CREATE INDEX "CheckIn_episodeId_receivedAt_idx" ON "CheckIn"("episodeId", "receivedAt");

-- CreateIndex
CREATE UNIQUE INDEX "CheckIn_episodeId_clientId_bodySha256_key" ON "CheckIn"("episodeId", "clientId", "bodySha256");

-- CreateIndex
CREATE INDEX "Photo_episodeId_receivedAt_idx" ON "Photo"("episodeId", "receivedAt");

-- CreateIndex
CREATE UNIQUE INDEX "Photo_episodeId_clientId_sha256_key" ON "Photo"("episodeId", "clientId", "sha256");

-- CreateIndex
CREATE UNIQUE INDEX "Analysis_photoId_methodVersion_key" ON "Analysis"("photoId", "methodVersion");

-- CreateIndex
CREATE UNIQUE INDEX "OutlineVersion_photoId_number_key" ON "OutlineVersion"("photoId", "number");

-- CreateIndex
CREATE INDEX "Assessment_episodeId_madeAt_idx" ON "Assessment"("episodeId", "madeAt");

-- CreateIndex
CREATE UNIQUE INDEX "Finding_episodeId_fingerprint_key" ON "Finding"("episodeId", "fingerprint");

-- CreateIndex
CREATE INDEX "Resolution_episodeId_idx" ON "Resolution"("episodeId");

-- CreateIndex
CREATE INDEX "Message_episodeId_at_idx" ON "Message"("episodeId", "at");

-- CreateIndex
CREATE INDEX "AuditEvent_episodeId_at_idx" ON "AuditEvent"("episodeId", "at");

-- CreateIndex
CREATE INDEX "Job_state_madeAt_idx" ON "Job"("state", "madeAt");

