/** What the documents of the project show, held to what the program does. */
package org.castwright.docs;
