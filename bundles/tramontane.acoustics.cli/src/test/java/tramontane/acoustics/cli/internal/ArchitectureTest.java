package tramontane.acoustics.cli.internal;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    @Test
    void theVerbsKnowTheApiOnly() {
        classes().should().onlyDependOnClassesThat().resideInAnyPackage("java..", "tramontane.acoustics.cli..", "tramontane.acoustics",
                "tramontane.acoustics.recording", "tramontane.cli", "tramontane.cli.terminal", "tramontane.analysis", "tramontane.model",
                "tramontane.model.file", "tramontane.physics..", "com.google.gson..", "org.osgi..").check(new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("tramontane.acoustics.cli"));
    }
}
