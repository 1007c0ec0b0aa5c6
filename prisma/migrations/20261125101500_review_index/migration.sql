-- CreateIndex
CREATE INDEX "Analysis_outcome_finishedAt_idx" ON "Analysis"("outcome", "finishedAt");
