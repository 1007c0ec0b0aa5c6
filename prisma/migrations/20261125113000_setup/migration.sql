-- AlterTable
ALTER TABLE "Clinic" ADD COLUMN "paper" TEXT NOT NULL DEFAULT 'a4';

-- AlterTable
ALTER TABLE "RuleBookVersion" ADD COLUMN "sources" TEXT NOT NULL DEFAULT '{}';

-- AlterTable
ALTER TABLE "Procedure" ADD COLUMN "foot" TEXT;
ALTER TABLE "Procedure" ADD COLUMN "ifItFails" TEXT;

-- CreateTable
CREATE TABLE "PlanTemplate" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "clinicId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "json" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "retiredAt" DATETIME,
    CONSTRAINT "PlanTemplate_clinicId_fkey" FOREIGN KEY ("clinicId") REFERENCES "Clinic" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "PlanTemplate_clinicId_retiredAt_idx" ON "PlanTemplate"("clinicId", "retiredAt");
