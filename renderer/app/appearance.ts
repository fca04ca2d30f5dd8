import { prefer, projector, theme } from "../state/settings.ts";

export const toggleProjector = (): void => prefer({ projector: !projector.value });
export const toggleTheme = (): void => prefer({ theme: theme.value === "dark" ? "light" : "dark" });
