/**
 * How nginx, Apache and IIS serve the add-in's folder. From these servers'
 * documented directives; nginx 1.22 and Apache 2.4 were run with theirs, IIS
 * was not.
 */

/** Every ending of a file in the folder. */
const TYPES = {
  html: "text/html",
  css: "text/css",
  js: "text/javascript",
  json: "application/json",
  xml: "text/xml",
  txt: "text/plain",
  png: "image/png",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
} as const;

/** Long enough for Office, which asks that pictures may be kept; short enough for a new version. */
const KEPT_S = 3600;
const FOLDER = "/srv/rigsheet";

const typeLines = (line: (ending: string, type: string) => string): string =>
  Object.entries(TYPES)
    .map(([ending, type]) => line(ending, type))
    .join("\n");

export function serverSnippets(address: string): Record<"nginx" | "apache" | "iis", string> {
  const { hostname, port, pathname } = new URL(address);
  const at = pathname === "/" ? "/" : `${pathname}/`;
  const listen = port || "443";
  return {
    nginx: `server {
    listen ${listen} ssl;
    server_name ${hostname};
    ssl_certificate     /etc/ssl/certs/${hostname}.pem;
    ssl_certificate_key /etc/ssl/private/${hostname}.key;

    location ${at} {
        alias ${FOLDER}/;
        index index.html;
        charset utf-8;
        types {
${typeLines((ending, type) => `            ${type} ${ending};`)}
        }
        add_header Access-Control-Allow-Origin "*" always;
        add_header Cache-Control "max-age=${KEPT_S}";
    }
}`,
    // mod_ssl, mod_alias, mod_mime, mod_dir, mod_headers
    apache: `<VirtualHost *:${listen}>
    ServerName ${hostname}
    SSLEngine on
    SSLCertificateFile    /etc/ssl/certs/${hostname}.pem
    SSLCertificateKeyFile /etc/ssl/private/${hostname}.key

    ${pathname === "/" ? `DocumentRoot "${FOLDER}"` : `Alias "${pathname}" "${FOLDER}"`}
    <Directory "${FOLDER}">
        Require all granted
        DirectoryIndex index.html
        AddDefaultCharset utf-8
${typeLines((ending, type) => `        AddType ${type} .${ending}`)}
        Header always set Access-Control-Allow-Origin "*"
        Header set Cache-Control "max-age=${KEPT_S}"
    </Directory>
</VirtualHost>`,
    iis: `<?xml version="1.0" encoding="UTF-8"?>
<configuration>
  <system.webServer>
    <defaultDocument>
      <files>
        <clear/>
        <add value="index.html"/>
      </files>
    </defaultDocument>
    <staticContent>
${typeLines(
  (ending, type) =>
    `      <remove fileExtension=".${ending}"/>\n      <mimeMap fileExtension=".${ending}" mimeType="${type}"/>`,
)}
      <clientCache cacheControlMode="UseMaxAge" cacheControlMaxAge="01:00:00"/>
    </staticContent>
    <httpProtocol>
      <customHeaders>
        <remove name="Access-Control-Allow-Origin"/>
        <add name="Access-Control-Allow-Origin" value="*"/>
      </customHeaders>
    </httpProtocol>
  </system.webServer>
</configuration>`,
  };
}
