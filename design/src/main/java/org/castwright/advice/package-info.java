/**
 * From a finished mold and a material to the numbers of its pour: how it fills, how fast, whether
 * it freezes meanwhile, what presses where and must be held, how thick the walls need be, what size
 * comes out, how it cools or cures, what to weigh, print and pay. Accepts bodies and channels as a
 * folder holds them ({@link org.castwright.advice.PourJob}); promises an {@link
 * org.castwright.advice.PourAdvice} for the report, in which what is not known is null and named in
 * a note, and the reasons for which the mold does not suit the pour. It plans nothing and writes
 * nothing. Mold frame, mm, N, Pa, kg, s.
 */
package org.castwright.advice;
