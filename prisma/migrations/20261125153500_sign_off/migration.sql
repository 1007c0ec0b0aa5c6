-- CreateTable
CREATE TABLE "Closing" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "step" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "leftOpen" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "Closing_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Closing_episodeId_at_idx" ON "Closing"("episodeId", "at");
