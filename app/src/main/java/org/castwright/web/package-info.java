/**
 * The bench: a server on this machine alone, for a page in the browser. Accepts models and orders
 * over HTTP, hands them one at a time to a {@link org.castwright.web.Maker}, and gives out the job
 * folders that the command line writes, too. It listens on loopback only and answers nobody without
 * the token of its start; {@code openapi.json} beside the page describes every call.
 */
package org.castwright.web;
