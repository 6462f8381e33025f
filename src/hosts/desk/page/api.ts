/** Whoever keeps the jobs and works on files: the desk's server, or the page itself. */
import { inPageApi } from "./inPageApi";
import { serverApi } from "./serverApi";
import { stand } from "./stand";

export const api: typeof serverApi = stand === "server" ? serverApi : inPageApi(stand);
