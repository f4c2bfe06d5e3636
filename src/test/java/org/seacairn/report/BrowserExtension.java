package org.seacairn.report;

import java.nio.file.Path;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/**
 * Hands one {@link Browser} to all tests that take one; it ends after the last of them. Where there is no chromium,
 * tests of classes with this extension are skipped, unless {@code SEACAIRN_BROWSER=required} is set: then they fail.
 */
final class BrowserExtension implements ExecutionCondition, ParameterResolver {
    private static final boolean REQUIRED = "required".equals(System.getenv("SEACAIRN_BROWSER"));

    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        return condition(REQUIRED, Browser.executable().isPresent());
    }

    static ConditionEvaluationResult condition(boolean required, boolean there) {
        return required || there
                ? ConditionEvaluationResult.enabled(there ? "chromium is there" : "a browser is required")
                : ConditionEvaluationResult.disabled("no chromium on the PATH; SEACAIRN_BROWSER=required makes this a failure");
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Browser.class;
    }

    @Override
    public Browser resolveParameter(ParameterContext parameter, ExtensionContext context) {
        Path executable = Browser.executable().orElseThrow(
                () -> new IllegalStateException("SEACAIRN_BROWSER=required, but there is no chromium on the PATH"));
        // The root store closes what it holds after the last test of all classes.
        return context.getRoot().getStore(ExtensionContext.Namespace.create(BrowserExtension.class))
                .getOrComputeIfAbsent(Browser.class, any -> Browser.start(executable), Browser.class);
    }
}
