-- The packed map from which the outlines of a photo can be drawn anew.
ALTER TABLE "Analysis" ADD COLUMN "mapSha256" TEXT;
