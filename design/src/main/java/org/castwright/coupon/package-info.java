/**
 * Fit coupons: small prints that tell a maker what the own printer and material do. Accepts a
 * printing process, a key and ladders of gaps and bores; promises closed solids made by the kernel,
 * each lying ready on z = 0, with the sizes to read from them. {@link org.castwright.coupon.Coupon}
 * is the way in. The sockets are those of a mold: same shape, same gap along the normal. What the
 * maker reads goes into {@link org.castwright.trial.Calibration}.
 */
package org.castwright.coupon;
