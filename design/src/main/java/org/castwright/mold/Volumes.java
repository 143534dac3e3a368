package org.castwright.mold;

/**
 * What fills the block, mm³. {@code block = pieces + casting + channels + keyClearance + features}.
 *
 * @param block the outer body before anything is cut
 * @param casting the cavity
 * @param channels gate and vents inside the block and outside the casting
 * @param keyClearance the gaps between keys and sockets
 * @param features grooves, holes, slots and marks
 */
public record Volumes(
    double block, double casting, double channels, double keyClearance, double features) {}
