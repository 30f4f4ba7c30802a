/** The documents are held to the product: their commands are run, their tables compared, their links followed. */
package org.cupbeam.studio.docs;
