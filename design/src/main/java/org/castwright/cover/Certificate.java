package org.castwright.cover;

/**
 * How sure the number of pulls is.
 *
 * @param least the least number of pulls found that keeps the tolerance; 0 when none of up to eight
 *     does
 * @param lowerBound no fewer of the candidates keep the tolerance, proved by exhausting all sets
 * @param proven whether the two are the same
 * @param nodes how many nodes the exact search looked at
 * @param candidates how many directions were on trial
 * @param samples how many points were judged
 * @param rows how many different rows they make
 */
public record Certificate(
    int least, int lowerBound, boolean proven, long nodes, int candidates, int samples, int rows) {}
