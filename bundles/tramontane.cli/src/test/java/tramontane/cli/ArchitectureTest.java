package tramontane.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("tramontane.cli");

    @Test
    void theCommandLineKnowsTheApiOnly() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("java..", "tramontane.cli..", "tramontane.analysis",
                "tramontane.model", "tramontane.model.file", "tramontane.physics..", "picocli", "com.google.gson..",
                "org.osgi..").check(CLASSES);
    }

    @Test
    void theApiForVerbsDoesNotKnowHowItIsDone() {
        noClasses().that().resideInAPackage("tramontane.cli").should().dependOnClassesThat()
                .resideInAnyPackage("tramontane.cli.internal..", "picocli", "com.google.gson..").check(CLASSES);
    }

    @Test
    void formsOfOutputKnowNeitherVerbsNorTheFramework() {
        noClasses().that().resideInAPackage("tramontane.cli.internal.output").should().dependOnClassesThat()
                .resideInAnyPackage("tramontane.cli.internal", "tramontane.cli", "picocli", "org.osgi..").check(CLASSES);
    }

    @Test
    void whatOthersMayUseKnowsNothingInternal() {
        noClasses().that().resideInAPackage("tramontane.cli.terminal").should().dependOnClassesThat()
                .resideInAPackage("tramontane.cli.internal..").check(CLASSES);
    }
}
