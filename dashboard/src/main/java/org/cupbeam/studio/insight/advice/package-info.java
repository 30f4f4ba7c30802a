/**
 * What to practise next, by stated rules.
 *
 * <p>Belongs here: rules that follow from findings alone, each with its reason and its data. Does not belong here: anything
 * of body or health, and any promise.
 */
package org.cupbeam.studio.insight.advice;
