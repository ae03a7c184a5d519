package dev.waterjet.measure;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a package or type that may change or vanish in any version but a patch.
 *
 * <p>The mark of a package holds for all its types; a member of another type whose signature names such a type is
 * experimental too. Everything else that is public is stable: see the versions in {@code DEVELOPERS.md}. The mark is about
 * the interface and states nothing about the quality of a result, which {@code Evidence} does.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.PACKAGE, ElementType.TYPE})
public @interface Experimental {}
