-- CreateTable
CREATE TABLE "OpenCase" (
    "episodeId" TEXT NOT NULL PRIMARY KEY,
    "clinicId" TEXT NOT NULL,
    "levelRank" INTEGER NOT NULL,
    "sinceAt" DATETIME NOT NULL,
    "asked" BOOLEAN NOT NULL,
    "firstId" TEXT NOT NULL,
    "findings" TEXT NOT NULL,
    "question" TEXT,
    "reach" TEXT,
    "refused" TEXT,
    "changesAt" DATETIME,
    CONSTRAINT "OpenCase_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "OpenCase_clinicId_asked_levelRank_sinceAt_episodeId_idx" ON "OpenCase"("clinicId", "asked", "levelRank", "sinceAt", "episodeId");

-- CreateIndex
CREATE INDEX "OpenCase_changesAt_idx" ON "OpenCase"("changesAt");
